/** A box to tick, with its words. */
export interface TickProps {
  readonly label: string;
  readonly on: boolean;
  readonly onTick: (on: boolean) => void;
}

export function Tick({ label, on, onTick }: TickProps) {
  return (
    <label class="desk-tick">
      <input type="checkbox" checked={on} onChange={({ currentTarget }) => onTick(currentTarget.checked)} />
      <span>{label}</span>
    </label>
  );
}
