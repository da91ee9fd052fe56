/** One symbol of a circuit, drawn as the trade draws it: the shapes of IEC 60617 and IEEE 315, from memory. */
import type { CircuitSymbol } from '../../present/circuit/circuitTypes.ts';
import './symbols.css';

const COIL = 'M0 -26a8 6.5 0 0 1 0 13a8 6.5 0 0 1 0 13a8 6.5 0 0 1 0 13a8 6.5 0 0 1 0 13';
const CORE = 'M-13 20L14 -20m-7 2l7 -2l-1 7';
const EARTH = 'M-11 -6H11M-7 -1H7M-3 4H3';
const SOURCE = 'M0 8V-8m-4 5l4 -5l4 5';
const VALVE = 'M-13 -15H13M0 -29V-15M-13 19V15H13V19M0 15V29M-29 0H-17';
const GRIDS = 'M-17 0H17M-17 -7H17';
const TRANSISTOR = 'M-29 0H-9M-9 -15V15M-9 -7L0 -16V-29M-9 7L0 16V29';
const FM =
  'M-60 -32H-38M-22 -32H20M-60 28H-38M-22 28H20M-38 -40V-24L-22 -32ZM-22 -40V-24M-22 20V36L-38 28ZM-38 20V36M20 -32V-24M20 -8V4M20 20V28M20 -2H60M-2 -32V-8M-2 2V28M-12 -8H8M-12 2H8';

function shape({ kind, slug, lying, box }: CircuitSymbol) {
  switch (kind) {
    case 'resistor':
      return lying ? <rect x={-19} y={-6} width={38} height={12} /> : <path d="M-6 -16H6V16H-6ZM0 -19V-16M0 16V19" />;
    case 'capacitor':
      return (
        <path class="heavy" d={lying ? 'M-4 -12V12M4 -12V12M-7 0H-4M4 0H7' : 'M-12 -4H12M-12 4H12M0 -7V-4M0 4V7'} />
      );
    case 'coil':
      return (
        <g transform={lying ? 'rotate(-90)' : undefined}>
          <path d={COIL} />
          {slug === null ? null : <path class="core" d={CORE} />}
        </g>
      );
    case 'diode':
      return <path class="solid" d="M-8 -8V8L8 0ZM8 -9V9M-19 0H-8M8 0H19" />;
    case 'valve':
      return (
        <>
          <circle r={28} />
          <path d={VALVE} />
          <path class="grids" d={GRIDS} />
        </>
      );
    case 'transistor':
      return (
        <>
          <circle r={28} />
          <path d={TRANSISTOR} />
          <path class="solid" d="M0 16L-7 15L-2 9Z" />
        </>
      );
    case 'fmDetector':
      return (
        <>
          <rect class="frame-line" x={-58} y={-54} width={116} height={108} />
          <path d={FM} />
          <path d="M14 -24H26V-8H14ZM14 4H26V20H14Z" />
        </>
      );
    case 'biasFeed':
      return <path d="M-24 0H-14M-14 -6H14V6H-14ZM14 0H24" />;
    case 'source':
      return (
        <>
          <circle r={14} />
          <path d={SOURCE} />
        </>
      );
    case 'point':
      return (
        <>
          <circle r={7} />
          <circle class="solid" r={2.4} />
        </>
      );
    case 'earth':
      return <path d={EARTH} />;
    case 'supply':
      return <path d="M0 -14V-4M-6 -4H6M-4 6H4M0 2V10" />;
    case 'shield':
      return <rect class="frame-line" x={-box.width / 2} y={-box.height / 2} width={box.width} height={box.height} />;
  }
}

/** units of the drawing */
const LEAST_REACH = 30;

interface SymbolMarkProps {
  readonly symbol: CircuitSymbol;
  readonly name: string;
  readonly pointed: boolean;
  readonly onPoint: (symbol: CircuitSymbol) => void;
}

export function SymbolMark({ symbol, name, pointed, onPoint }: SymbolMarkProps) {
  const { at, box, label, disc, note } = symbol;
  const drawing = (
    <>
      <g class="sign" transform={`translate(${at.x} ${at.y})`}>
        {shape(symbol)}
      </g>
      {label === null ? null : (
        <text
          x={symbol.kind === 'shield' ? at.x : label.x}
          y={label.y}
          class="part-name"
          {...(symbol.kind === 'shield' ? { 'text-anchor': 'middle' as const } : {})}
        >
          {label.text}
        </text>
      )}
    </>
  );
  // Beside the button, not in it: its name says the letter in words, and what is seen of a button has to stand in its name.
  const beside = (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the focus
    <g class="beside" aria-hidden="true">
      {disc === null ? null : (
        <g transform={`translate(${disc.at.x} ${disc.at.y})`} class="letter">
          <circle r={10} />
          <text y={5} text-anchor="middle">
            {disc.letter}
          </text>
        </g>
      )}
      {note === null ? null : (
        <text x={note.x} y={note.y} class="note">
          {note.text}
        </text>
      )}
    </g>
  );
  if (symbol.name === null)
    return (
      <g>
        {drawing}
        {beside}
      </g>
    );
  // Large enough to hit where the drawing is small.
  const tall = Math.max(box.height + 10, LEAST_REACH);
  const reach = { x: box.x - 5, y: box.y + (box.height - tall) / 2, width: box.width + 10, height: tall };
  return (
    <>
      {/* biome-ignore lint/a11y/useSemanticElements: a button cannot stand in a drawing */}
      <g
        class={pointed ? 'symbol pointed' : 'symbol'}
        role="button"
        tabIndex={0}
        aria-label={name}
        aria-pressed={pointed}
        data-part={symbol.part ?? symbol.name}
        onPointerEnter={() => onPoint(symbol)}
        onFocus={() => onPoint(symbol)}
        onClick={() => onPoint(symbol)}
        onKeyDown={(event) => {
          if (event.key !== 'Enter' && event.key !== ' ') return;
          event.preventDefault();
          onPoint(symbol);
        }}
      >
        <rect class="reach" {...reach} rx={3} />
        {drawing}
      </g>
      {beside}
    </>
  );
}
