/** Three trimming tools; one at most is in the hand. Keys 1 to 3 take one, 0 lays it down. */

import { useMemo, useRef } from 'preact/hooks';
import { TOOL_IDS as TOOLS, type ToolId } from '../../../bench/benchState.ts';
import { useKeyDown } from '../../../kit/hooks/useKeyDown.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { Short } from '../../../kit/Short.tsx';
import { Ink } from '../../../kit/theme/art.tsx';
import type { BenchPort } from '../../../present/ports.ts';
import type { BenchLayout } from '../layout.ts';
import { TOOLS_IN_ROW } from '../layoutShelf.ts';
import { isFreeKey } from '../pageKeys.ts';
import { placed, SceneHead } from './SceneHead.tsx';
import { toolArt } from './toolArt.ts';
import { useBench } from './useBench.ts';
import './scene.css';
import './inset.css';

export function ToolRack({ port, layout }: { readonly port: BenchPort; readonly layout: BenchLayout }) {
  const { scene: sceneWords } = useWords();
  const inHand = useBench(port, (state) => state.tool);
  const buttons = useRef(new Map<ToolId, HTMLButtonElement>()).current;
  const take = (tool: ToolId | null): void => {
    if (port.state().tool !== tool) port.act({ type: 'toolTaken', tool });
  };
  useKeyDown((e) => {
    if (!isFreeKey(e)) return;
    if (e.key === '0') take(null);
    else {
      const tool = TOOLS[['1', '2', '3'].indexOf(e.key)];
      if (tool === undefined) return;
      take(tool);
    }
    e.preventDefault();
  });

  const walk = (e: KeyboardEvent, at: number): void => {
    const by =
      e.key === 'ArrowRight' || e.key === 'ArrowDown' ? 1 : e.key === 'ArrowLeft' || e.key === 'ArrowUp' ? -1 : 0;
    if (by === 0) return;
    e.preventDefault();
    const next = TOOLS[(at + by + TOOLS.length) % TOOLS.length]!;
    take(next);
    buttons.get(next)?.focus();
  };
  const { form, tools } = layout;
  const row = form === 'shelf' && tools.height <= TOOLS_IN_ROW;
  const third = tools.width / 3;
  const artWidth =
    form === 'full' ? tools.width - 18 : form === 'upright' ? third - 22 : row ? third - 10 : tools.width - 80;
  return (
    <section class={`tool-rack ${form}${row ? ' row' : ''}`} style={placed(tools)} aria-label={sceneWords.toolsTitle}>
      <SceneHead no={7}>{sceneWords.toolsTitle}</SceneHead>
      <div class="tools" role="radiogroup" aria-label={sceneWords.toolsTitle}>
        {TOOLS.map((tool, i) => (
          // biome-ignore lint/a11y/useSemanticElements: pressing it again lays the tool down, which no radio input can
          <button
            key={tool}
            type="button"
            role="radio"
            class={`tool ringed${tool === inHand ? ' in-hand' : ''}`}
            aria-checked={tool === inHand}
            aria-label={sceneWords.toolSpoken(tool, tool === inHand)}
            aria-keyshortcuts={String(i + 1)}
            tabIndex={tool === inHand || (inHand === null && i === 0) ? 0 : -1}
            ref={(element) => {
              if (element === null) buttons.delete(tool);
              else buttons.set(tool, element);
            }}
            onClick={() => take(tool === inHand ? null : tool)}
            onKeyDown={(e) => walk(e, i)}
          >
            <ToolPicture tool={tool} width={Math.round(artWidth)} />
            <span class="tool-words">
              {row ? (
                <span class="tool-name">{sceneWords.toolName(tool)}</span>
              ) : (
                <Short class="tool-name">{sceneWords.toolName(tool)}</Short>
              )}
              {form === 'full' ? <Short class="l2">{sceneWords.toolNote(tool)}</Short> : null}
            </span>
          </button>
        ))}
      </div>
    </section>
  );
}

function ToolPicture({ tool, width }: { readonly tool: ToolId; readonly width: number }) {
  const svg = useMemo(() => toolArt(tool, width), [tool, width]);
  return <Ink svg={svg} width={width} height={18} />;
}
