/** Right or wrong as a small disc: a tick on petrol, a cross in a rust ring. */
export function Tick({ right = true }: { readonly right?: boolean }) {
  return (
    <svg class="ink tick" width="20" height="20" viewBox="-10 -10 20 20" aria-hidden="true">
      {right ? (
        <>
          <circle r="9" fill="var(--petrol)" stroke="var(--ink)" stroke-width="1.2" />
          <path d="M-4 0l3 3.500l5.500 -6.500" fill="none" stroke="#fff" stroke-width="2" />
        </>
      ) : (
        <>
          <circle r="8.500" fill="var(--sheet)" stroke="var(--rust)" stroke-width="2" />
          <path d="M-4 -4l8 8m0 -8l-8 8" stroke="var(--rust)" stroke-width="2" stroke-linecap="round" />
        </>
      )}
    </svg>
  );
}
