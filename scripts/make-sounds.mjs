/**
 * Makes every sound of the bench by calculation: assets/sounds/sprites.wav (16 bit, mono, 16 kHz) and sprites.json, which says where each lies.
 * No recording is used. The same script gives the same sounds; `--check` compares instead of writing.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { PROJECT } from './install.mjs';

const RATE = 16_000;
/** Silence after each sound, and for a loop its own continuation before and after: a player that resamples reads a little past the ends. */
const GAP_SECONDS = 0.006;

/** Name, seconds, voice: a function of time in seconds and a seeded noise source, giving -1 to 1. */
const SHORT = {
  // A blade that snaps over: two contacts, the second after the spring.
  switch: [
    0.08,
    (t, n) => 0.7 * tick(t, 1900, 0.004, n) + 0.6 * tick(t - 0.028, 1250, 0.007, n) + 0.25 * ring(t - 0.028, 310, 0.02),
  ],
  // A relay: the armature's knock under the contact.
  relay: [
    0.11,
    (t, n) => 0.6 * tick(t, 820, 0.008, n) + 0.5 * ring(t, 170, 0.03) + 0.4 * tick(t - 0.05, 1450, 0.006, n),
  ],
  // A spring clip that closes on a wire.
  clip: [
    0.075,
    (t, n) => 0.6 * tick(t, 2600, 0.004, n) + 0.3 * ring(t, 1180, 0.016) + 0.25 * tick(t - 0.022, 3300, 0.003, n),
  ],
  unclip: [0.065, (t, n) => 0.35 * tick(t, 3300, 0.003, n) + 0.35 * ring(t - 0.012, 1480, 0.012)],
  // Two pins that seat one after the other.
  crystal: [0.09, (t, n) => 0.55 * tick(t, 2100, 0.004, n) + 0.65 * tick(t - 0.045, 1700, 0.005, n)],
  blade: [0.05, (t, n) => 0.5 * tick(t, 2900, 0.005, n) + 0.2 * ring(t, 2250, 0.012)],
  detent: [0.03, (t, n) => 0.5 * tick(t, 2400, 0.0035, n)],
  detentNearStop: [0.04, (t, n) => 0.55 * tick(t, 1150, 0.006, n)],
  // A thread that binds: a creak which rises while it is forced.
  stop: [0.15, (t, n) => 0.4 * bell(t, 0.15) * saw(180 * t + 420 * t * t) * (0.7 + 0.3 * n())],
  // Ferrite gives way: one hard crack and its crumbs.
  crack: [
    0.13,
    (t, n) =>
      0.95 * tick(t, 3600, 0.006, n) +
      0.35 * burst(t - 0.012, 0.03, n) +
      0.4 * tick(t - 0.06, 2700, 0.004, n) +
      0.3 * tick(t - 0.095, 3100, 0.003, n),
  ],
  // A wrong head that rides over the slot.
  slip: [0.11, (t, n) => 0.3 * bell(t, 0.11) * n() + 0.25 * tick(t - 0.07, 1500, 0.006, n)],
  // Two low thuds: a hand that should not be there.
  unsafe: [0.25, (t, n) => thud(t, n) + 0.9 * thud(t - 0.13, n)],
  // A pencil that signs: three strokes of hiss on paper.
  sign: [0.26, (t, n) => 0.35 * n() * (bell(t, 0.09) + 0.8 * bell(t - 0.1, 0.07) + 0.9 * bell(t - 0.16, 0.1))],
  // Two soft notes, a fourth apart.
  proof: [0.2, (t) => 0.35 * ring(t, 660, 0.05) + 0.35 * ring(t - 0.07, 880, 0.06)],
  // A pencil that ticks a step: one short stroke.
  stepDone: [0.1, (t, n) => 0.35 * n() * (0.5 * bell(t, 0.04) + bell(t - 0.035, 0.06))],
  // One soft note.
  lineIn: [0.16, (t) => 0.35 * ring(t, 880, 0.05)],
  // Three soft notes upwards.
  foundRight: [
    0.3,
    (t) => 0.3 * ring(t, 660, 0.05) + 0.3 * ring(t - 0.07, 880, 0.05) + 0.35 * ring(t - 0.14, 1320, 0.06),
  ],
  // A lead that falls on the bench.
  missed: [0.16, (t, n) => 0.4 * thud(t, n) + 0.2 * tick(t - 0.06, 900, 0.006, n)],
};

/** Loops hold whole cycles of every partial, so that end and beginning meet. */
const LOOPS = {
  // 50 Hz and its harmonics as a ripple on the earth would give; the desk plays it 1.2 times as fast for 60 Hz.
  hum: [
    1,
    (t) =>
      0.3 * sine(50 * t) +
      0.42 * sine(100 * t + 0.1) +
      0.22 * sine(150 * t + 0.3) +
      0.12 * sine(200 * t) +
      0.06 * sine(300 * t + 0.2),
  ],
  // The 400 Hz tone that a source sends on its carrier, with the little bend that a diode adds.
  tone: [0.25, (t) => 0.7 * sine(400 * t) + 0.05 * sine(800 * t + 0.25)],
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) main(process.argv.slice(2));

function main(args) {
  const { wav, map } = makeSprites();
  const folder = path.join(PROJECT, 'assets', 'sounds');
  const files = [
    ['sprites.wav', wav],
    [
      'sprites.json',
      Buffer.from(
        `${JSON.stringify(map, null, 2)}\n`.replace(
          /\[\s+([^\]]*?)\s+\]/g,
          (_, inside) => `[${inside.replace(/\s+/g, ' ')}]`,
        ),
      ),
    ],
  ];
  if (args.includes('--check')) {
    for (const [name, bytes] of files) {
      if (alike(name, bytes, readFileSync(path.join(folder, name)))) continue;
      console.error(`assets/sounds/${name} is not what scripts/make-sounds.mjs makes; run: npm run sounds`);
      process.exitCode = 1;
    }
    return;
  }
  mkdirSync(folder, { recursive: true });
  for (const [name, bytes] of files) writeFileSync(path.join(folder, name), bytes);
  console.log(`assets/sounds: ${Object.keys(map).length} sounds, ${wav.length} bytes`);
}

/** The whole sprite file and its map: name -> [start ms, length ms] and `true` for a loop. */
export function makeSprites() {
  const pieces = [];
  const map = {};
  let at = 0;
  const add = (samples) => {
    pieces.push(samples);
    at += samples.length;
  };
  const gap = Math.round(GAP_SECONDS * RATE);
  for (const [name, [seconds, voice]] of Object.entries(SHORT)) {
    map[name] = [toMs(at), toMs(seconds * RATE)];
    add(shortSound(seconds, voice));
    add(new Float64Array(gap));
  }
  for (const [name, [seconds, voice]] of Object.entries(LOOPS)) {
    map[name] = [toMs(at + gap), toMs(seconds * RATE), true];
    add(Float64Array.from({ length: Math.round(seconds * RATE) + 2 * gap }, (_, i) => voice((i - gap) / RATE)));
  }
  return { wav: toWav(pieces), map };
}

/** The map and the header to the byte; a sample may differ by its last bit, as sines do between two builds of the language. */
function alike(name, made, kept) {
  if (!name.endsWith('.wav')) return made.equals(kept);
  if (made.length !== kept.length || !made.subarray(0, 44).equals(kept.subarray(0, 44))) return false;
  for (let i = 44; i < made.length; i += 2) if (Math.abs(made.readInt16LE(i) - kept.readInt16LE(i)) > 1) return false;
  return true;
}

function shortSound(seconds, voice) {
  const noise = seededNoise(1);
  const count = Math.round(seconds * RATE);
  const fade = Math.round(0.004 * RATE);
  // The tail goes to nothing: a cut sound ends in a click of its own.
  return Float64Array.from({ length: count }, (_, i) => voice(i / RATE, noise) * Math.min(1, (count - 1 - i) / fade));
}

function sine(cycles) {
  return Math.sin(2 * Math.PI * cycles);
}

function saw(cycles) {
  return 2 * (cycles - Math.floor(cycles)) - 1;
}

/** A struck mode: a sine that dies away; 1/e after `tau` seconds. */
function ring(t, hz, tau) {
  return t < 0 ? 0 : Math.exp(-t / tau) * sine(hz * t);
}

/** A dry contact: a mode and as much noise under the same quick decay. */
function tick(t, hz, tau, noise) {
  const n = noise();
  return t < 0 ? 0 : Math.exp(-t / tau) * (0.6 * sine(hz * t) + 0.5 * n);
}

function burst(t, tau, noise) {
  const n = noise();
  return t < 0 ? 0 : Math.exp(-t / tau) * n;
}

function thud(t, noise) {
  const n = noise();
  if (t < 0) return 0;
  return 0.8 * Math.exp(-t / 0.045) * sine(95 * t - 120 * t * t) + 0.12 * Math.exp(-t / 0.01) * n;
}

/** Rises and falls once over `seconds`. */
function bell(t, seconds) {
  return t < 0 || t > seconds ? 0 : Math.sin((Math.PI * t) / seconds) ** 2;
}

/** Uniform noise in -1..1 from the 32-bit xorshift generator (Marsaglia 2003). */
function seededNoise(seed) {
  let x = seed ^ 0x6d2b79f5;
  return () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    return (x | 0) / 2147483648;
  };
}

/** A RIFF file with one PCM track. */
function toWav(pieces) {
  const samples = pieces.flatMap((piece) => [...piece]);
  const wav = Buffer.alloc(44 + samples.length * 2);
  wav.write('RIFF', 0, 'latin1');
  wav.writeUInt32LE(36 + samples.length * 2, 4);
  wav.write('WAVEfmt ', 8, 'latin1');
  wav.writeUInt32LE(16, 16);
  wav.writeUInt16LE(1, 20);
  wav.writeUInt16LE(1, 22);
  wav.writeUInt32LE(RATE, 24);
  wav.writeUInt32LE(RATE * 2, 28);
  wav.writeUInt16LE(2, 32);
  wav.writeUInt16LE(16, 34);
  wav.write('data', 36, 'latin1');
  wav.writeUInt32LE(samples.length * 2, 40);
  samples.forEach((value, i) => {
    wav.writeInt16LE(Math.round(Math.max(-1, Math.min(1, value)) * 32767), 44 + i * 2);
  });
  return wav;
}

function toMs(samples) {
  return Math.round((samples / RATE) * 1e6) / 1e3;
}
