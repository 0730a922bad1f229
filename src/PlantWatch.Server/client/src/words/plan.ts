// The dosing plan.

export const plan = {};
