/** Handbook: when not to align. */
import type { HandbookPage } from '../../handbook.ts';

export const whenNot: HandbookPage = {
  id: 'when-not',
  group: 'The job',
  title: 'When not to align',
  lead: '[Slugs](slug) do not turn by themselves. If a set that worked has stopped working, alignment is the last thing to suspect and the first thing to spoil.',
  figures: [
    {
      kind: 'faults',
      title: 'Which of these is alignment?',
      caption: 'Only one of them is. Go through them and say which before you look at the name.',
      controls: {
        fault: ['What is wrong', 'nothing', 'one slug off', 'damping open', 'extra load', 'weak stage'],
      },
      readings: { height: 'Height against the sound strip', width: 'Width' },
    },
  ],
  blocks: [
    {
      p: 'Wax holds, threads hold, capacitors drift a little over many years, all of them together. What a set loses in a week it has not lost through its slugs. A valve is tired, a capacitor leaks, a supply is low, somebody has been at it. Turn the slugs to make up for it, and afterwards you have two faults.',
    },
    { h: 'Leave it alone' },
    {
      list: [
        'when the curve has the right shape and is only low;',
        'when it changes with level, time, touch or temperature;',
        'when a slug that ought to move it does not;',
        'when the picture is bad and the curve is good: then it is not the strip;',
        'when you have no [sheet](sheet) for the set, and it works;',
        'when the fault came suddenly;',
        'when your own bench has not been proved.',
      ],
    },
    { h: 'Do it' },
    {
      list: [
        'when a coil, [a can](can) or a capacitor across one has been changed;',
        'when a valve has been replaced in a [stage](stage) that is sharp and works at a high frequency, and the curve shows that it matters: often it does not;',
        'when somebody has turned the slugs before you, and owned up to it;',
        'when everything else has been shown to be right, and the curve still is not that of the sheet.',
      ],
    },
    { h: 'First look, then turn' },
    {
      p: 'Looking costs nothing. Connect, set up, compare with the sheet, and write down what you see before any tool comes near a slug. Mark where each core stands: count the threads, or put a dot of paint on it. A job that can be undone is half as dangerous.',
    },
    {
      p: 'A small lean within the sheet’s tolerance is not a fault. Nobody watching the set will ever see it, and the slug that you turn to cure it may be one that has not been moved for thirty years and cracks. To sign a sheet with the words *found in order, nothing touched* takes some confidence. It is often the best work of the day.',
    },
    {
      p: 'And stop when it is right. The last tenth is where the cores break.',
    },
  ],
};
