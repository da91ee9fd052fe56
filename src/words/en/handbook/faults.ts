/** Handbook: faults by their shape. */
import type { HandbookPage } from '../../handbook.ts';

export const faults: HandbookPage = {
  id: 'faults',
  group: 'The job',
  title: 'Faults by their shape',
  lead: 'A [slug](slug) that is off moves things. A part that has failed changes what can be moved. The curve tells you which, if you ask before you turn.',
  figures: [
    {
      kind: 'faults',
      title: 'One strip, several sorrows',
      caption: 'Dashed: the strip in order. All drawn to the same scale, so heights can be compared.',
      controls: {
        fault: ['What is wrong', 'nothing', 'one slug off', 'damping open', 'extra load', 'weak stage'],
      },
      readings: { height: 'Height against the sound strip', width: 'Width' },
    },
  ],
  blocks: [
    {
      p: 'Look at three things: height, width, place. A slug that is off shifts one piece of the curve: what one side loses, another gains. A part that has failed makes the whole taller or lower, narrower or wider, and no slug brings it back.',
    },
    { h: 'Low, and of the right shape' },
    {
      p: 'Gain is missing somewhere, and tuning is not. A weak valve, a low supply, too much [bias](bias), a screen [by-pass](bypass) that has opened. No slug will find it. Meter the voltages.',
    },
    { h: 'Tall and narrow' },
    {
      p: 'Something that used to damp has let go: a resistor across a coil, or a diode that no longer [loads](loading). The [stage](stage) is sharp, and the curve stands up like a spire at its frequency. In the figure an open [damping resistor](damping) raises the top by {openRaises}. If it also whistles or the [pip](pip) moves when you touch a lead, the stage is near oscillation.',
    },
    { h: 'It sings' },
    {
      p: 'Past that edge a stage makes a [carrier](carrier) of its own. The whole line stands up, [blanked](blanking) [retrace](retrace) and all, and the curve is small and beats where the [sweep](sweep) goes by. Turn the source right down: in a quiet set the line falls to nothing. Look for a lid, a screen or a decoupling.',
    },
    { h: 'Low and wide' },
    {
      p: 'Something takes energy that should not: a leaky capacitor, a shorted turn, a diode with a leak, your own [probe](probe). The stage can hardly be peaked; the slug turns and the curve shrugs.',
    },
    { h: 'One hump gone' },
    {
      p: '[A can](can) that ought to have two humps and shows one, wherever its slugs stand, has lost a circuit: a broken wire, a capacitor open, a core that is cracked and stays where it is while the tool turns. If a slug moves nothing at all, believe it.',
    },
    { h: 'A bite out of the top' },
    {
      p: 'A [trap](trap) in the wrong place, or a choke or a stray lead that has become one. It moves with one slug, or with none.',
    },
    { h: 'It changes by itself' },
    {
      p: 'With time: warming up, or a capacitor on its way. With level: [overload](overload), or the [AGC](agc) is not [clamped](clamp). With a tap on the chassis: a joint. With your hand: earth.',
    },
    { h: 'Half of an S' },
    {
      p: 'One diode of the pair is open. The half that is left looks healthy, and the zero is nowhere near the [marker](marker).',
    },
    { h: 'Bridge it, meter it' },
    {
      p: 'A good capacitor clipped across a doubtful one, with the set on, brings back what an open one has lost. It says nothing of one that leaks. Across a good one that tunes a coil it pulls the circuit down. A bridge mends nothing: take it off before you judge or sign.',
    },
    {
      p: 'An ohmmeter in the circuit reads everything that lies beside the part. Across a coil that is next to nothing, whatever the damping resistor has become; a broken winding shows at once. A diode reads low one way round and its load the other. A leaky [coupling](coupling) capacitor is found with the set on: the grid stands above its bias line.',
    },
    {
      p: 'When you suspect a part, prove it before you fit another: bridge it, lift it, meter it. And when the part has been changed, look at the curve again before you touch a slug. It may have been in line all the time.',
    },
  ],
};
