/** Handbook: safety. */
import type { HandbookPage } from '../../handbook.ts';

export const safety: HandbookPage = {
  id: 'safety',
  group: 'The job',
  title: 'Safety',
  lead: 'Nothing on this bench can hurt you; a real set can kill. Learn the habits here, where a mistake costs points.',
  figures: [
    {
      kind: 'lead',
      title: 'What the strap is worth',
      caption:
        'The strap goes on only after the meter has said that the chassis is not live. With the lead [terminated](termination), what is still uneven is what you give up while the strap is off.',
      controls: { end: ['End of the lead', 'terminated', 'open'], earth: ['Earth strap', 'on', 'off'] },
      readings: { tilt: 'From lowest to highest' },
    },
  ],
  blocks: [
    {
      caution:
        'This page does not make anybody competent to open a set. Work on real sets follows the codes of the place where you are and the maker’s own notices, and is done by people qualified and licensed for it, or together with them. Where they say otherwise, they are right and this page is wrong.',
    },
    { h: 'The chassis may be live' },
    {
      p: 'In many sets one side of the mains is the chassis: a [live chassis](hotChassis). Which side depends on the plug, and it may be the wrong one. Work only from an [isolating transformer](isolating), and meter from chassis to earth before anything of the bench is joined to it. For the leakage check at the end the transformer has to come out again: that check is made as your code has it, by somebody who is allowed to make it.',
    },
    { h: 'What stays charged' },
    {
      p: 'Reservoir capacitors keep their charge after switching off. A capacitor of {bleedFarads} at {bleedVolts} needs {bleedSeconds} through a [bleeder](bleeder) of {bleedOhms} to come down to {bleedTo}, and a bleeder can be open without anybody knowing. So discharge through a resistor, never with a screwdriver, and then meter. Discharged is what the meter says.',
    },
    {
      p: 'The picture tube is a capacitor too, charged to thousands of volts, and it can hold them for days. Its glass is under the pressure of the air and can implode. Regulators at such voltages can give off X-rays when they are out of adjustment. On this bench that corner is fenced off. Leave it so at home.',
    },
    { h: 'Habits' },
    {
      steps: [
        'Somebody within call, who knows where the switch is.',
        'No ring, no watch, no chain.',
        'One hand in the set, the other in your pocket.',
        'Insulated tools; plastic for the [slugs](slug).',
        'Switch off, discharge, meter, then clip the lead. Switch on, look, switch off again.',
        'Stand dry. Sit so that a start throws you back and not in.',
        'When you are tired, stop.',
      ],
    },
    { h: 'Old parts' },
    {
      p: 'Insulation goes brittle, resistors drift, capacitors leak or burst, and mains leads crumble where they enter the cabinet. A set that has stood for years is brought up by somebody who knows how, not by the switch. Some old parts hold substances that have no place on skin or in lungs.',
    },
    {
      p: 'On this bench an unsafe act is told at once and costs points. No curve, however good, makes up for it.',
    },
  ],
};
