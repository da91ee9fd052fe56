/**
 * Leads over the bench: drawn by Pixi on a canvas that takes no pointer, each with a button on its free end. An end is dragged to a point, or
 * lifted with Return and walked over the legal points; a list of plain selects does the same for whoever prefers it.
 */

import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { type LeadEnd, type LeadId, TUBE_X } from '../../../bench/benchState.ts';
import { legalEnds } from '../../../bench/leads.ts';
import { useResolution } from '../../../kit/hooks/useResolution.ts';
import { useSpoken } from '../../../kit/hooks/useSpoken.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import type { Rect } from '../../../kit/px.ts';
import { spotNow } from '../../../present/liveSpot.ts';
import type { BenchPort } from '../../../present/ports.ts';
import type { Words } from '../../../words/words.ts';
import type { BenchLayout } from '../layout.ts';
import { JackLabels } from './JackLabels.tsx';
import { LeadList } from './LeadList.tsx';
import { LeadTargets } from './LeadTargets.tsx';
import { endUnder, labelUnder, REACH } from './leadAim.ts';
import type { LeadCanvas } from './leadCanvas.ts';
import type { Carry } from './leadCarry.ts';
import { useLeadDrag } from './leadDrag.ts';
import { type LeadPlace, leadGround, placeLeads, shownOn } from './leadPlaces.ts';
import { placed } from './SceneHead.tsx';
import { useBench } from './useBench.ts';
import './scene.css';
import './leads.css';

/** how long a note over the chassis stands */
const NOTE_MS = 4000;

interface LeadsLayerProps {
  readonly port: BenchPort;
  readonly layout: BenchLayout;
  /** a lead was let go beside every point */
  readonly onMiss: () => void;
}

export function LeadsLayer({ port, layout, onMiss }: LeadsLayerProps) {
  const { scene: sceneWords } = useWords();
  const { receiver } = port;
  const leads = useBench(port, (state) => state.leads);
  const tips = useBench(port, ({ controls: c }) => `${c.yTip} ${c.rfTerminated} ${c.rfCapacitor}`);
  const ground = useMemo(() => leadGround(layout, receiver), [layout, receiver]);
  const places = useMemo(() => placeLeads(ground, port.state()), [ground, leads, tips]);
  const area = useMemo(() => leadArea(layout), [layout]);
  const { canvas, sheet } = useLeadCanvas(layout, area, places, leads);
  const [carry, setCarry] = useState<Carry | null>(null);
  const [spoken, setSpoken] = useSpoken();
  /** what is told over the chassis: a lead that fell, a point that was pressed with no lead in hand */
  const [note, setNote] = useState<string | null>(null);
  useEffect(() => {
    if (note === null) return;
    const timer = setTimeout(() => setNote(null), NOTE_MS);
    return () => clearTimeout(timer);
  }, [note]);
  const layer = useRef<HTMLDivElement>(null);
  const grips = useRef(new Map<LeadId, HTMLButtonElement>()).current;

  const shownAt = (lead: LeadId, end: LeadEnd): void => {
    const at = ground.ends.get(end);
    const place = places.find((p) => p.kind.id === lead)!;
    if (at !== undefined) sheet.current?.carry(shownOn(ground, lead, place.tip, at));
  };
  const over = (): void => {
    setCarry(null);
    sheet.current?.carry(null);
  };
  const lift = (lead: LeadId, by: Carry['by']): void => {
    setNote(null);
    const legal = legalEnds(port.setup, port.state().leads, lead);
    setCarry({ lead, legal, by });
    if (by === 'keys') setSpoken(legal.length === 0 ? sceneWords.carryNowhere(lead) : sceneWords.carry(lead));
  };
  /** Puts an end down; where the bench refuses, the page says why and the lead goes back. */
  const drop = (lead: LeadId, end: LeadEnd | null): void => {
    over();
    const now = port.state().leads[lead];
    if (end === now) {
      setSpoken(sceneWords.putBack(lead));
    } else if (end === null) {
      if (port.act({ type: 'leadRemoved', lead }).ok) setSpoken(sceneWords.laidDown(lead));
    } else if (port.act({ type: 'leadConnected', lead, to: end }).ok && port.state().leads[lead] === end) {
      setSpoken(sceneWords.landed(lead, endName(sceneWords, end)));
    } else setSpoken(sceneWords.putBack(lead));
  };
  const tell = (text: string): void => {
    setSpoken(text);
    setNote(text);
  };
  const backToGrip = (lead: LeadId): void => grips.get(lead)?.focus({ preventScroll: true });
  const missed = (lead: LeadId): void => {
    over();
    tell(sceneWords.missed(lead));
    onMiss();
  };
  const pointAt = (clientX: number, clientY: number): LeadEnd | null => {
    const bench = layer.current!.getBoundingClientRect();
    const [x, y] = [clientX - bench.left, clientY - bench.top];
    return endUnder(ground.ends, x, y, REACH) ?? labelUnder(ground.labels, x, y);
  };
  usePointPressed(carry === null, pointAt, (end) => {
    const lead = leadMeant(port, end);
    const where = endName(sceneWords, end);
    tell(lead === null ? sceneWords.takeFirst(where) : sceneWords.takeThisFirst(lead, where));
  });
  const drag = useLeadDrag({ ground, receiver, sheet, lift, drop, missed, cancel: over });

  return (
    <div ref={layer} class={`leads-layer ${layout.form}${carry === null ? '' : ' carrying'}`}>
      <canvas class="leads-canvas" ref={canvas} style={placed(area)} />
      <JackLabels layout={layout} />
      {places.map((place) => (
        <Grip
          key={place.kind.id}
          place={place}
          away={carry?.lead === place.kind.id}
          elementRef={(element) => {
            if (element === null) grips.delete(place.kind.id);
            else grips.set(place.kind.id, element);
          }}
          onDown={(e) => drag(e, place)}
          onLift={() => lift(place.kind.id, 'keys')}
          onOff={() => drop(place.kind.id, null)}
        />
      ))}
      {carry === null ? null : (
        <LeadTargets
          carry={carry}
          layout={layout}
          ends={ground.ends}
          from={leads[carry.lead]}
          names={(end) => endName(sceneWords, end)}
          pointAt={pointAt}
          onLook={(end) => {
            if (end === null) sheet.current?.carry(null);
            else shownAt(carry.lead, end);
          }}
          onDrop={(end) => {
            drop(carry.lead, end);
            backToGrip(carry.lead);
          }}
          onCancel={() => {
            over();
            setSpoken(sceneWords.putBack(carry.lead));
            backToGrip(carry.lead);
          }}
        />
      )}
      {note === null ? null : (
        <p
          class="carry-note"
          aria-hidden="true"
          style={{ left: `${layout.chassis.x + layout.chassis.width / 2}px`, top: `${layout.chassis.y + 14}px` }}
        >
          {note}
        </p>
      )}
      <LeadList port={port} layout={layout} />
      <p class="unseen" role="status">
        <span key={spoken.no}>{spoken.text}</span>
      </p>
    </div>
  );
}

/** A test point, or the tube's X input, pressed with no lead in hand. */
function usePointPressed(
  idle: boolean,
  pointAt: (clientX: number, clientY: number) => LeadEnd | null,
  onPressed: (end: LeadEnd) => void,
): void {
  const latest = useRef({ pointAt, onPressed });
  latest.current = { pointAt, onPressed };
  useEffect(() => {
    if (!idle) return;
    const press = ({ target, clientX, clientY }: PointerEvent): void => {
      if (!(target instanceof Element) || target.closest('.bench') === null || target.closest(WORKED) !== null) return;
      const end = latest.current.pointAt(clientX, clientY);
      if (end !== null) latest.current.onPressed(end);
    };
    addEventListener('pointerdown', press);
    return () => removeEventListener('pointerdown', press);
  }, [idle]);
}

/** A press on one of these is meant for it. */
const WORKED = 'button, input, select, label, dialog, .knob, .switch, .position-row, .slug';

/** The lead that the step to do now wants there; a sealed job does not say. */
function leadMeant(port: BenchPort, end: LeadEnd): LeadId | null {
  const spot = port.scenario.sealed ? null : spotNow(port);
  return spot?.kind === 'lead' && spot.to === end ? spot.lead : null;
}

const endName = ({ tubeX }: Words['scene'], end: LeadEnd): string => (end === TUBE_X ? tubeX : end);

function Grip({
  place,
  away,
  elementRef,
  onDown,
  onLift,
  onOff,
}: {
  readonly place: LeadPlace;
  readonly away: boolean;
  readonly elementRef: (element: HTMLButtonElement | null) => void;
  readonly onDown: (e: PointerEvent) => void;
  readonly onLift: () => void;
  readonly onOff: () => void;
}) {
  const { scene: sceneWords } = useWords();
  const { kind, end, grip, route } = place;
  const name = end === null ? sceneWords.leadLoose(kind.id) : sceneWords.leadOn(kind.id, endName(sceneWords, end));
  const across = Math.abs(Math.cos((route.tipDegrees * Math.PI) / 180)) > 0.6;
  return (
    <button
      type="button"
      class={`lead-grip${across ? ' across' : ' upright'}${away ? ' away' : ''}`}
      style={{ left: `${grip.x}px`, top: `${grip.y}px` }}
      aria-label={name}
      aria-description={sceneWords.leadHow}
      data-lead={kind.id}
      ref={elementRef}
      onPointerDown={onDown}
      onClick={(e) => {
        // A key or a screen reader presses without a pointer; taps are the drag's business.
        if (e.detail === 0) onLift();
      }}
      onKeyDown={(e) => {
        if ((e.key !== 'Delete' && e.key !== 'Backspace') || end === null) return;
        e.preventDefault();
        onOff();
      }}
    >
      <span class="lead-ring" style={{ transform: `rotate(${route.tipDegrees}deg)` }} aria-hidden="true" />
      <span class={`scene-flag${grip.x < 80 ? ' to-right' : ''}`} aria-hidden="true">
        {name}
      </span>
    </button>
  );
}

/** Everything that a lead may cross; on the shelf forms it ends at the shelf, from behind which the leads come up. */
function leadArea(layout: BenchLayout): Rect {
  const { chassis, leadTray: tray, shelf, page } = layout;
  const jacks = Object.values(layout.jacks);
  const left = Math.max(0, Math.min(chassis.x, tray.x, ...jacks.map((j) => j.x)) - 30);
  const top = Math.max(0, Math.min(chassis.y, tray.y, ...jacks.map((j) => j.y)) - 30);
  const right = Math.min(page.width, Math.max(chassis.x + chassis.width, tray.x + tray.width) + 14);
  const lowest = Math.max(chassis.y + chassis.height, tray.y + tray.height, ...jacks.map((j) => j.y)) + 30;
  const bottom = shelf === null ? Math.min(page.height, lowest) : shelf.y;
  return { x: left, y: top, width: right - left, height: bottom - top };
}

function useLeadCanvas(layout: BenchLayout, area: Rect, places: readonly LeadPlace[], leads: unknown) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const sheet = useRef<LeadCanvas | null>(null);
  const [ready, setReady] = useState(false);
  const resolution = useResolution();
  useEffect(() => {
    let closed = false;
    void import('./leadCanvas.ts')
      .then((m) => m.openLeadSheet(canvas.current!))
      .then((opened) => {
        if (closed) return opened.close();
        sheet.current = opened;
        setReady(true);
      });
    return () => {
      closed = true;
      sheet.current?.close();
      sheet.current = null;
    };
  }, []);
  useEffect(() => {
    sheet.current?.cover(area);
    sheet.current?.jacks(Object.values(layout.jacks).filter((j) => !j.hidden));
  }, [ready, area, layout, resolution]);
  const before = useRef<{ leads: unknown; places: readonly LeadPlace[] } | null>(null);
  useEffect(() => {
    if (sheet.current === null) return;
    sheet.current.show(places);
    const old = before.current;
    before.current = { leads, places };
    if (old === null || old.leads === leads) return;
    const moved = places.find((p) => old.places.find((o) => o.kind.id === p.kind.id)?.end !== p.end);
    const still = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
    if (moved !== undefined && !still) sheet.current.settle(moved.kind.id);
  }, [ready, places, leads]);
  return { canvas, sheet };
}
