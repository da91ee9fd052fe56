/** How large things on a chassis plan are drawn, plan units: for who draws them and for who checks that nothing lies on anything else. */
export const CAN = 54;
export const TRAP_RADIUS = 19;
export const DISC_RADIUS = 10;
export const VALVE_RADIUS = 27;
export const ELECTROLYTIC_RADIUS = 22;
export const TRANSFORMER = { width: 88, height: 76 } as const;
