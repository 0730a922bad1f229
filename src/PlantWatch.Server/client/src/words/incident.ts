// Contamination incidents.

export const incident = {};
