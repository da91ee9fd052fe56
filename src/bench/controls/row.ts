/** What one row of the table of controls may say. Everything else that is known of a control follows from its row. */

/** Where a control stands; the names of the panels are in the catalogue. */
export type ControlPanel = 'sweep' | 'rack' | 'leads' | 'bias' | 'tube';

/** What a figure is, which says how it is written, spoken and typed. */
export type ControlUnit =
  | 'hz'
  | 'hzWide'
  | 'hzOff'
  | 'db'
  | 'degrees'
  | 'divisions'
  | 'volts'
  /** without its sign, which a switch beside it gives */
  | 'unsignedVolts'
  | 'voltsPerDiv'
  | 'times'
  | 'share';

/** A part that not every set has; a receiver without it has null or nothing there. */
export type SetPart = 'videoFeed' | 'converter' | 'mains' | 'oscillator';

interface Standing {
  readonly panel: ControlPanel;
  /** drawn only where the set has this part; elsewhere it has nothing to do, and may be set all the same */
  readonly drawnWith?: SetPart;
}

export interface SwitchRow extends Standing {
  readonly kind: 'switch';
  readonly resting: boolean;
}

/** Two or more positions with names of their own. */
export interface PositionsRow extends Standing {
  readonly kind: 'positions';
  /** in the order in which they are drawn */
  readonly choices: readonly string[];
  /** a choice that is refused where the set has no such part */
  readonly needs?: Readonly<Record<string, SetPart>>;
  readonly resting: string;
}

interface Turned extends Standing {
  readonly unit: ControlUnit;
  readonly resting: number;
  /** the arc over the knob grows from the top; left out: where the quantity has both signs */
  readonly fromTop?: boolean;
  /** a value that somebody might type; left out: the sheet's own frequency where there is one, else the resting value */
  readonly example?: number;
}

/** A knob that clicks from one value of a list to the next. */
export interface ClicksRow extends Turned {
  readonly kind: 'clicks';
  /** in rising order */
  readonly choices: readonly number[];
}

/** A knob, or a dial, that may stand anywhere between two ends. */
export interface RangeRow extends Turned {
  readonly kind: 'range';
  readonly min: number;
  readonly max: number;
  /** `bySet`: about a hundredth of what the receiver's part of the spectrum is swept over */
  readonly step: number | 'bySet';
  /** left out: a tenth of the step, or the whole of it where there are only whole ones */
  readonly fineStep?: number;
  /** only whole steps exist, as in an attenuator */
  readonly stepped?: true;
  /** equal turns, equal factors: so many positions from end to end, rounded to `fineStep` */
  readonly positions?: number;
  /** a notch of the wheel, or an arrow, goes by about this part of its own value or of the sweep's span, in round figures; left out: by one step */
  readonly notch?: { readonly of: 'itself' | 'span'; readonly part: number };
  /** a dial that is read at a hairline; left out: a knob */
  readonly drawnAs?: 'dial';
}

export type ControlRow = SwitchRow | PositionsRow | ClicksRow | RangeRow;
export type ControlRows = Readonly<Record<string, ControlRow>>;

/** What a control of this row holds. */
export type ValueOf<Row> = Row extends { readonly kind: 'switch' }
  ? boolean
  : Row extends { readonly kind: 'positions'; readonly choices: readonly (infer Choice)[] }
    ? Choice
    : number;

export type ValuesOf<Rows> = { readonly [Id in keyof Rows]: ValueOf<Rows[Id]> };

/** Names of the rows that stand on a panel. */
export type IdsOnPanel<Rows, Panel extends ControlPanel> = {
  [Id in keyof Rows]: Rows[Id] extends { readonly panel: Panel } ? Id : never;
}[keyof Rows];

/** Names of the rows of some kinds. */
export type IdsOfKind<Rows, Kind extends ControlRow['kind']> = {
  [Id in keyof Rows]: Rows[Id] extends { readonly kind: Kind } ? Id : never;
}[keyof Rows];
