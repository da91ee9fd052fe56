/** Who answers ten looks in a row rightly is sure: by guessing between two answers that happens once in a thousand times. */
const IN_A_ROW = 10;

export const isSure = (looks: readonly boolean[]): boolean =>
  looks.length >= IN_A_ROW && looks.slice(-IN_A_ROW).every((right) => right);
