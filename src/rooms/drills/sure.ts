/** A drill is mastered with ten right answers in a row: by guessing between two answers that happens once in a thousand times. */
const IN_A_ROW = 10;

export const isSure = (looks: readonly boolean[]): boolean =>
  looks.length >= IN_A_ROW && looks.slice(-IN_A_ROW).every((right) => right);
