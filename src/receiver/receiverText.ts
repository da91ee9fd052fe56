/** Everything that a receiver file says to people, in one more language. What is printed on the chassis itself (plan, devices, ids) stays as it is. */

export interface ReceiverText {
  readonly setName: string;
  readonly title: string;
  readonly description: string;
  /** by slug id */
  readonly adjusters: Readonly<Record<string, { readonly label: string; readonly does: string }>>;
  /** by point id */
  readonly testPoints: Readonly<Record<string, { readonly label: string; readonly note: string }>>;
  /** titles by response id */
  readonly responses: Readonly<Record<string, string>>;
  /** in the order of the file's own steps */
  readonly procedure: readonly string[];
  /** in the order of the file's own cautions */
  readonly cautions: readonly string[];
}
