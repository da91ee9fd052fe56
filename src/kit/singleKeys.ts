/** Whether single letters, digits and brackets act from anywhere on a page. They can be switched off, for hands and dictation that press them unasked (WCAG 2.2, 2.1.4). */

export function singleKeysAct(): boolean {
  return document.documentElement.dataset.singleKeys !== 'off';
}

export function letSingleKeysAct(on: boolean): void {
  document.documentElement.dataset.singleKeys = on ? 'on' : 'off';
}
