/**
 * English: the trade's words, and the few of ours. `forms`: how a word may stand in a text.
 * Over 300 lines: one list in the order of the alphabet, which is looked up and not read through.
 */

export interface TermWords {
  readonly term: string;
  readonly means: string;
  readonly forms: readonly string[];
}

export const glossaryWords = {
  /** to the page that says more */
  more: 'Read more',
  terms: {
    adjacent: {
      term: 'adjacent channel',
      means:
        'The station next door on the dial: its carriers fall at the edges of your band and have to be trapped out.',
      forms: ['adjacent channel', 'adjacent channels', 'adjacent sound', 'adjacent vision'],
    },
    agc: {
      term: 'AGC',
      means:
        'Automatic gain control: a line that turns the stages down as the signal grows, and so changes the curve while you watch it.',
      forms: ['AGC', 'AGC line'],
    },
    bandwidth: {
      term: 'bandwidth',
      means:
        'How wide a curve is, taken between the two places where it stands at seven tenths of its top unless the sheet says otherwise.',
      forms: ['bandwidth'],
    },
    baseLine: {
      term: 'base line',
      means: 'The line that the tube draws with no signal: levels are counted from it, so it has to be seen.',
      forms: ['base line', 'baseline'],
    },
    bias: {
      term: 'bias',
      means: 'The standing voltage on a grid or base that sets how much a stage amplifies.',
      forms: ['bias', 'bias supply'],
    },
    bleeder: {
      term: 'bleeder',
      means: 'A resistor that empties a capacitor after switching off, as long as it has not failed itself.',
      forms: ['bleeder', 'bleeders'],
    },
    blanking: {
      term: 'blanking',
      means: 'Shutting the sweep source off on its way back, so that the way back draws the base line.',
      forms: ['blanking', 'blanked', 'retrace blanking'],
    },
    bridged: {
      term: 'bridged trap',
      means:
        'A trap with a resistor that balances its losses: set both right and nothing at all comes through at its frequency.',
      forms: ['bridged trap', 'bridged traps'],
    },
    bypass: {
      term: 'by-pass',
      means: 'A capacitor that leads the signal to earth and leaves the standing voltage where it is.',
      forms: ['by-pass', 'by-passes'],
    },
    can: {
      term: 'can',
      means: 'A screened transformer of two tuned circuits, each with its own slug.',
      forms: ['cans', 'a can', 'the can', 'each can', 'one can'],
    },
    carrier: {
      term: 'carrier',
      means: 'The steady wave that brings a programme; what matters on a response is how high the carrier stands.',
      forms: ['carrier', 'carriers', 'vision carrier', 'sound carrier', 'standing carrier'],
    },
    clamp: {
      term: 'clamp',
      means: 'To hold the AGC line still with a bias supply of your own while you align.',
      forms: ['clamp', 'clamped', 'clamps'],
    },
    coupling: {
      term: 'coupling',
      means: 'How much of one circuit’s field reaches the other; it decides whether a can draws one hump or two.',
      forms: ['coupling', 'coupled'],
    },
    critical: {
      term: 'critical coupling',
      means: 'Just enough coupling for the tallest single hump: one step more and it starts to split in two.',
      forms: ['critical coupling', 'critical'],
    },
    crystal: {
      term: 'crystal',
      means: 'A marker that cannot be wrong: it swings at the one frequency that is written on it.',
      forms: ['crystal', 'crystals'],
    },
    damping: {
      term: 'damping resistor',
      means: 'A resistor across a coil that spends some of its energy on purpose, to make the stage wider and lower.',
      forms: ['damping resistor', 'damping resistors', 'damping'],
    },
    detector: {
      term: 'detector',
      means: 'The diode that turns the height of the carrier into a voltage; it is where the tube usually looks.',
      forms: ['detector', 'detectors'],
    },
    probe: {
      term: 'diode probe',
      means: 'A detector at the end of a lead, for looking at a point where the set has none of its own.',
      forms: ['diode probe', 'detector probe', 'probe'],
    },
    discriminator: {
      term: 'discriminator',
      means: 'Two diodes that pull against each other and answer to frequency; it needs a limiter before it.',
      forms: ['discriminator', 'discriminators'],
    },
    earth: {
      term: 'earth strap',
      means: 'The short, stout lead that makes the bench and the set share one earth.',
      forms: ['earth strap', 'earth lead'],
    },
    graticule: {
      term: 'graticule',
      means: 'The ruled lines on the tube’s face, ten divisions wide and eight high.',
      forms: ['graticule'],
    },
    haystack: {
      term: 'haystack',
      means: 'The shape of a wide response with steep sides, and what a good one fills up with here.',
      forms: ['haystack'],
    },
    hotChassis: {
      term: 'live chassis',
      means:
        'A chassis joined to one side of the mains: it may be at full mains voltage, whichever way round the plug is.',
      forms: ['live chassis', 'hot chassis'],
    },
    if: {
      term: 'intermediate frequency',
      means:
        'The one frequency, IF for short, to which the tuner brings every station, so that the stages behind it never have to be retuned.',
      forms: ['intermediate frequency', 'IF', 'IF strip'],
    },
    isolating: {
      term: 'isolating transformer',
      means:
        'A transformer with separate windings between the mains and the bench, so that no side of the supply is earth.',
      forms: ['isolating transformer'],
    },
    isolatingResistor: {
      term: 'isolating resistor',
      means: 'A resistor in the tip of a lead that keeps the lead’s capacitance off the circuit.',
      forms: ['isolating resistor'],
    },
    limiter: {
      term: 'limiter',
      means: 'A stage that is meant to overload, so that its output keeps one height whatever comes in.',
      forms: ['limiter', 'limiters'],
    },
    link: {
      term: 'link',
      means: 'A few turns round each of two coils and a wire between: one can in two places.',
      forms: ['link', 'links', 'link coupling'],
    },
    loading: {
      term: 'loading',
      means: 'Whatever takes energy from a circuit, and so makes its curve lower and wider.',
      forms: ['loading', 'loaded', 'loads'],
    },
    marker: {
      term: 'marker',
      means: 'A signal of known frequency that leaves a pip on the curve, to show where you are.',
      forms: ['marker', 'markers'],
    },
    miller: {
      term: 'input capacitance',
      means: 'The capacitance of a stage’s own grid or base; it changes with bias and takes the coil before it along.',
      forms: ['input capacitance'],
    },
    mirror: {
      term: 'mirror switch',
      means: 'Turns the picture round, so that high frequencies stand on the side where your sheet has them.',
      forms: ['mirror switch', 'mirror'],
    },
    oscillator: {
      term: 'oscillator',
      means: 'The stage that makes a wave of its own, so that the tuner can bring every station to the same frequency.',
      forms: ['oscillator', 'oscillators'],
    },
    overload: {
      term: 'overload',
      means: 'More signal than a stage can follow: the top of the curve goes flat, and looks better than it is.',
      forms: ['overload', 'overloaded', 'overloads'],
    },
    phasing: {
      term: 'phasing',
      means: 'Bringing the tube’s sideways motion into step with the sweep, so that both traces fall on each other.',
      forms: ['phasing', 'phasing knob'],
    },
    pip: {
      term: 'pip',
      means: 'The little burst on the curve where the sweep passes a marker.',
      forms: ['pip', 'pips'],
    },
    proof: {
      term: 'proof',
      means:
        'Changing one thing on the bench, and watching that the curve keeps its shape: then it is the set\u2019s own.',
      forms: ['proof', 'proofs'],
    },
    q: {
      term: 'Q',
      means: 'How sharp a tuned circuit is: its frequency divided by its bandwidth.',
      forms: ['Q'],
    },
    ratio: {
      term: 'ratio detector',
      means: 'A pair of diodes whose sum is held by a reservoir, so that it hardly notices changes of level.',
      forms: ['ratio detector', 'ratio detectors'],
    },
    response: {
      term: 'response',
      means: 'How much a set gives at each frequency: the curve that the tube draws.',
      forms: ['response', 'responses', 'response curve'],
    },
    retrace: {
      term: 'retrace',
      means: 'The way back of the sweep, which draws the same curve a second time unless it is blanked.',
      forms: ['retrace'],
    },
    sCurve: {
      term: 'S-curve',
      means:
        'What an FM detector draws: zero in the middle, up on one side and down on the other, straight in between.',
      forms: ['S-curve', 'S-curves'],
    },
    sheet: {
      term: 'service sheet',
      means: 'The maker’s own paper: what is injected where, in what order, and how the curve should look.',
      forms: ['service sheet', 'sheet'],
    },
    sideband: {
      term: 'sidebands',
      means: 'What a programme puts on either side of its carrier; that is where the picture or the sound is.',
      forms: ['sideband', 'sidebands'],
    },
    slope: {
      term: 'slope',
      means: 'The side of the curve on which the vision carrier rides half way up.',
      forms: ['slope', 'slopes'],
    },
    slug: {
      term: 'slug',
      means: 'A core on a thread inside a coil: further in, the frequency falls.',
      forms: ['slug', 'slugs', 'core', 'cores'],
    },
    span: {
      term: 'span',
      means: 'From the lowest to the highest frequency of the sweep: what lies across the tube.',
      forms: ['span'],
    },
    spot: {
      term: 'spot frequency',
      means: 'One steady frequency instead of a sweep, for traps and other things that are set to a figure.',
      forms: ['spot frequency', 'spot frequencies'],
    },
    squareLaw: {
      term: 'square law',
      means: 'A diode with too little to do answers to the square of the level, so half height is drawn as a quarter.',
      forms: ['square law'],
    },
    stage: {
      term: 'stage',
      means: 'One valve or transistor with the circuits that belong to it.',
      forms: ['stage', 'stages'],
    },
    stagger: {
      term: 'stagger',
      means: 'To tune the stages to different frequencies on purpose, so that together they make one wide top.',
      forms: ['stagger', 'staggered', 'staggering'],
    },
    sweep: {
      term: 'sweep',
      means: 'A signal whose frequency runs through the band and back, some fifty times a second.',
      forms: ['sweep', 'swept', 'sweeps', 'sweep source'],
    },
    termination: {
      term: 'termination',
      means: 'The resistor at the end of a lead that swallows what arrives, so that nothing comes back along it.',
      forms: ['termination', 'terminated', 'unterminated'],
    },
    testPoint: {
      term: 'test point',
      means: 'A place that the sheet names for a lead.',
      forms: ['test point', 'test points'],
    },
    tone: {
      term: 'tone',
      means: 'An audio note put on the carrier, so that a trap can be set by ear or by its ripple on the tube.',
      forms: ['tone'],
    },
    trap: {
      term: 'trap',
      means: 'A tuned circuit that swallows one frequency and lets all the others pass.',
      forms: ['trap', 'traps'],
    },
    tunable: {
      term: 'tunable marker',
      means:
        'A marker with a dial, for every frequency that no crystal stands for; nearly right, and checked against one.',
      forms: ['tunable marker', 'tunable markers'],
    },
    tuned: {
      term: 'tuned circuit',
      means: 'A coil and a capacitor that answer best to one frequency.',
      forms: ['tuned circuit', 'tuned circuits'],
    },
  },
} as const satisfies { more: string; terms: Readonly<Record<string, TermWords>> };
