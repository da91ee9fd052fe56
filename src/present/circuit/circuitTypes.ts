/** What a circuit diagram is, worked out: symbols in their places, the wires between them, and the sections by which it is paged. Drawing units, y downwards. */

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface SymbolBox extends Spot {
  readonly width: number;
  readonly height: number;
}

export type SymbolKind =
  | 'resistor'
  | 'capacitor'
  | 'coil'
  | 'valve'
  | 'transistor'
  | 'diode'
  | 'fmDetector'
  | 'biasFeed'
  | 'source'
  | 'point'
  | 'earth'
  | 'supply'
  | 'shield';

export interface CircuitSymbol {
  /** unique in the diagram */
  readonly key: string;
  readonly kind: SymbolKind;
  /** element of the deck, detector, test point; null: a sign that has no name, such as earth */
  readonly name: string | null;
  /** its name in the parts tray; null: nobody replaces it */
  readonly part: string | null;
  /** the slug that it carries, by id */
  readonly slug: string | null;
  /** lies along the line instead of hanging from it */
  readonly lying: boolean;
  /** the middle of the symbol */
  readonly at: Spot;
  /** what the symbol takes up */
  readonly box: SymbolBox;
  readonly label: Lettering | null;
  /** the disc with the slug's letter */
  readonly disc: { readonly letter: string; readonly at: Spot } | null;
  /** under the disc or beside it: a trap's frequency, or the coil that it is coupled with */
  readonly note: Lettering | null;
  readonly section: number;
}

export interface Lettering extends Spot {
  readonly text: string;
  readonly box: SymbolBox;
}

export interface Section {
  /** the stage that it begins with, as an element of the deck; null where no stage does */
  readonly stage: string | null;
  readonly fromX: number;
  readonly toX: number;
}

export interface CircuitDiagram {
  readonly box: SymbolBox;
  readonly symbols: readonly CircuitSymbol[];
  readonly wires: readonly (readonly Spot[])[];
  /** joints */
  readonly dots: readonly Spot[];
  /** two coils side by side that are coupled: the lines of the core between them */
  readonly couplings: readonly { readonly element: string; readonly at: Spot }[];
  readonly sections: readonly Section[];
}

/** What is lettered beside the symbols that no deck names. */
export interface CircuitWords {
  readonly own: {
    readonly bypass: string;
    readonly decoupling: string;
    readonly coupling: string;
    readonly shield: string;
  };
  /** a trap's frequency */
  readonly hertz: (hz: number) => string;
  readonly coupledWith: (coil: string) => string;
}

/** Width of the condensed lettering, near enough to keep things apart. */
export const letteringWidth = (text: string): number => text.length * 7.2 + 2;
export const LETTERING = 14;
