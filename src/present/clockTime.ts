/** A time that is left, as a clock shows it: `0:48:52`. A second that has begun counts, so that it is 0:00:00 only when nothing is left. */
export function clockTime(milliseconds: number): string {
  const seconds = Math.ceil(Math.max(0, milliseconds) / 1000);
  const two = (figure: number): string => `${figure}`.padStart(2, '0');
  return `${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
}
