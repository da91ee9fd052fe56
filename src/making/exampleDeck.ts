/** A deck to begin with, for people who have none at hand: one can with two tuned circuits behind a stage, in the set of the harbour watch. */
export const EXAMPLE_NAME = 'harbour-watch.cir';

export const EXAMPLE_DECK = `* Harbour watch receiver, IF at 460 kHz
* one tuned circuit, a stage, one double-tuned can, a diode
Isig 0 mix AC 1u
C1 mix 0 200p
L1 mix 0 598.6u
RQ1 mix 0 120k    ; loss of the coil, Q 70
G1 pl 0 mix 0 2m  ; amplifier stage
C2p pl 0 200p
L2p pl 0 598.6u
RQ2p pl 0 150k
C2s det 0 200p
L2s det 0 598.6u
RQ2s det 0 150k
K2 L2p L2s 0.013
.ac lin 281 440k 480k
.print ac vdb(det)
.end
`;
