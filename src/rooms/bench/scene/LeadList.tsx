/** All leads as a list of plain selects, behind one button: the same acts without dragging, for keys, fingers and screen readers. */

import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { LeadId } from '../../../bench/benchState.ts';
import { legalEnds } from '../../../bench/leads.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Short } from '../../../kit/Short.tsx';
import type { BenchPort } from '../../../present/ports.ts';
import type { BenchLayout } from '../layout.ts';
import { LEADS } from './leadKinds.ts';
import { TRAY_BUTTON } from './leadPlaces.ts';
import { useBench } from './useBench.ts';

/** as it stands with a mouse; a taller one scrolls */
const LIST_HEIGHT = 500;

export function LeadList({ port, layout }: { readonly port: BenchPort; readonly layout: BenchLayout }) {
  const { scene: sceneWords } = useWords();
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (!open) return;
    box.current?.querySelector('select')?.focus({ preventScroll: true });
    const outside = (e: PointerEvent): void => {
      if (e.target instanceof Node && !box.current?.contains(e.target) && !button.current?.contains(e.target))
        setOpen(false);
    };
    window.addEventListener('pointerdown', outside, true);
    return () => window.removeEventListener('pointerdown', outside, true);
  }, [open]);
  const shut = (): void => {
    setOpen(false);
    button.current?.focus({ preventScroll: true });
  };
  const { chassisHead: head, leadTray: tray, chassis } = layout;
  const at =
    head === null
      ? { left: `${tray.x + tray.width - TRAY_BUTTON + 8}px`, top: `${tray.y}px` }
      : { left: `${head.x + head.width - TRAY_BUTTON + 8}px`, top: `${head.y - 4}px` };
  const right = layout.page.width - (chassis.x + chassis.width);
  const top =
    head === null ? Math.max(12, Math.min(chassis.y, layout.page.height - LIST_HEIGHT)) : head.y + head.height + 8;
  return (
    <>
      <button
        type="button"
        class="leads-button ringed"
        style={{ ...at, width: `${TRAY_BUTTON - 12}px` }}
        aria-expanded={open}
        aria-haspopup="dialog"
        ref={button}
        onClick={() => setOpen(!open)}
      >
        <Short>{sceneWords.leads}</Short>
      </button>
      {open ? (
        <div
          class="lead-list"
          role="dialog"
          aria-label={sceneWords.leadsTitle}
          ref={box}
          style={{ right: `${right}px`, top: `${top}px`, maxHeight: `calc(100vh - ${Math.min(top, 64) + 12}px)` }}
          onKeyDown={(e) => {
            if (e.key !== 'Escape') return;
            e.preventDefault();
            e.stopPropagation();
            shut();
          }}
        >
          <p class="h">{sceneWords.leadsTitle}</p>
          <p class="si">{sceneWords.leadsHint}</p>
          {LEADS.map(({ id }) => (
            <LeadRow key={id} port={port} lead={id} />
          ))}
          <button type="button" class="lead-list-close" onClick={shut}>
            {sceneWords.close}
          </button>
        </div>
      ) : null}
    </>
  );
}

function LeadRow({ port, lead }: { readonly port: BenchPort; readonly lead: LeadId }) {
  const { scene: sceneWords } = useWords();
  const leads = useBench(port, (state) => state.leads);
  const end = leads[lead];
  const [, again] = useState(0);
  const names = new Map(port.receiver.testPoints.map((p) => [p.id, sceneWords.pointName(p.id, p.label)]));
  const legal = legalEnds(port.setup, leads, lead);
  return (
    <label class="lead-row">
      <span class={`lead-swatch ${lead}`} aria-hidden="true" />
      <span class="lead-row-name">{sceneWords.leadName(lead)}</span>
      <select
        value={end ?? ''}
        onChange={(e) => {
          const to = e.currentTarget.value;
          port.act(to === '' ? { type: 'leadRemoved', lead } : { type: 'leadConnected', lead, to });
          // After a refusal the select must go back to what is true.
          e.currentTarget.value = port.state().leads[lead] ?? '';
          again((n) => n + 1);
        }}
      >
        <option value="">{sceneWords.loose}</option>
        {legal.map((id) => (
          <option key={id} value={id}>
            {names.get(id) ?? sceneWords.tubeX}
          </option>
        ))}
      </select>
    </label>
  );
}
