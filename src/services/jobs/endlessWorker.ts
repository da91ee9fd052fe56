/** Beside the page: makes and certifies a scenario of the endless track, so that the page does not stand still meanwhile. */
import { endlessScenario } from '../../certify/endless.ts';
import type { LoadedReceiver } from '../../files/library.ts';
import { endlessWords } from '../../words/en/endless.ts';

export interface EndlessOrder {
  readonly id: string;
  readonly receivers: ReadonlyMap<string, LoadedReceiver>;
}

self.onmessage = ({ data }: MessageEvent<EndlessOrder>) => {
  self.postMessage(endlessScenario(data.receivers, data.id, endlessWords));
};
