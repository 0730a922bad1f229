// Single doses.

export const dose = {};
