/** The browser's own way to choose files, out of sight: the button that opens it stands beside it. */
import type { Ref } from 'preact';

export interface FilesFieldProps {
  /** for its `click()` */
  readonly innerRef: Ref<HTMLInputElement>;
  readonly onFiles: (files: readonly File[]) => void;
  /** endings and types, as the browser takes them; left out: any */
  readonly accept?: string;
  readonly multiple?: boolean;
  /** a whole folder is chosen */
  readonly folder?: boolean;
  /** tells one from another on the same page */
  readonly picks?: string;
}

export function FilesField({ innerRef, onFiles, accept, multiple = false, folder = false, picks }: FilesFieldProps) {
  return (
    <input
      ref={innerRef}
      type="file"
      class="unseen"
      tabIndex={-1}
      aria-hidden="true"
      multiple={multiple}
      accept={accept}
      {...(folder ? { webkitdirectory: true } : {})}
      data-picks={picks}
      onChange={({ currentTarget }) => {
        const files = [...(currentTarget.files ?? [])];
        // The same file may be chosen once more.
        currentTarget.value = '';
        if (files.length > 0) onFiles(files);
      }}
    />
  );
}
