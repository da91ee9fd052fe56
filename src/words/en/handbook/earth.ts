/** Handbook: earth. */
import type { HandbookPage } from '../../handbook.ts';

export const earth: HandbookPage = {
  id: 'earth',
  group: 'The trade',
  title: 'Earth',
  lead: 'Every signal needs a way home. If you do not give it a short one it takes a long one, and brings things back with it.',
  figures: [
    {
      kind: 'lead',
      title: 'With the strap off',
      caption:
        'The lead is open and the strap lies beside the set. Fit the [termination](termination), and look at what is still uneven; then put the strap on.',
      controls: { end: ['End of the lead', 'terminated', 'open'], earth: ['Earth strap', 'on', 'off'] },
      readings: { tilt: 'From lowest to highest' },
    },
  ],
  blocks: [
    {
      p: 'The current that goes out along the middle of a cable comes back along its braid. That is so only where the braid is joined to the chassis, near the point of injection, by something short and stout. Otherwise it comes back through the mains leads, the bench and your hand.',
    },
    { h: 'What you see without it' },
    {
      list: [
        'Hum: the trace wanders up and down with the mains, or draws two or three lines instead of one.',
        'A curve that changes when you touch the set, the lead or the table.',
        'A level that is not level. On this bench a missing strap makes the source uneven by {strapRipple} from one frequency to another.',
        'Peaks that come and go as you lay the leads differently. Those are not in the set.',
      ],
    },
    {
      p: 'The test costs nothing: put your hand on the chassis of a set that is safe to touch, or move a lead by its length. The curve has no right to change.',
    },
    { h: 'One earth, one place' },
    {
      p: 'Join source, tube and set with one strap each, as short as they go, to one place near the input. Two straps to two ends of a chassis make a loop, and a loop hears the mains transformer. If the hum grows when you add a strap, that was one too many.',
    },
    { h: 'Before you clip it on' },
    {
      caution:
        'A chassis may be joined to one side of the mains. An [earth strap](earth) on it is then a short circuit through you, the bench or the strap. Work on such a set only from an [isolating transformer](isolating), and meter from chassis to earth before the strap goes on: first the meter, then the clip.',
    },
    {
      p: 'The order on the bench is always the same: transformer, meter, earth, the other leads. Taking down goes the other way round, and the earth comes off last. On sets with a mains transformer of their own the chassis may be earthed at once; the meter tells you, the cabinet does not.',
    },
    {
      p: 'An isolating transformer makes one fault harmless and hides it. With the strap on, one side of the set is earth again, and the other is as dangerous as ever. One hand in the set, the other behind your back.',
    },
  ],
};
