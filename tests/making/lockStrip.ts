/** A deck for tests of receivers of somebody’s own. */

/** A strip of our own: three tanks tuned apart about 30 MHz. */
export const LOCK_STRIP = `* Lock strip, three stages tuned apart
Isig in 0 AC 1u
C1 in 0 12p
L1 in 0 2.65u
R1 in 0 6.8k
G1 n2 0 in 0 5m
C2 n2 0 12p
L2 n2 0 2.05u
R2 n2 0 6.8k
G2 n3 0 n2 0 5m
C3 n3 0 12p
L3 n3 0 2.35u
R3 n3 0 3.3k
.ac lin 281 24meg 36meg
.print ac vdb(n3)
.end
`;
