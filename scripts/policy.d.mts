/** Types of policy.mjs. */
export const PAGE_POLICY: string;
export const POLICY: string;
