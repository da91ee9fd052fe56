/** Ends a union: a case that the types say cannot be reached crashes loudly if it is. */
export function unreachable(value: never): never {
  throw new Error(`a case was forgotten: ${JSON.stringify(value)}`);
}
