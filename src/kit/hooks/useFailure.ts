/** Errors of work that goes on beside a room: what is handed to the function is thrown while the room is drawn, where its boundary hears it. */
import { useState } from 'preact/hooks';

export function useFailure(): (error: unknown) => void {
  const [failure, setFailure] = useState<{ readonly error: unknown } | null>(null);
  if (failure !== null) throw failure.error;
  return (error) => setFailure({ error });
}
