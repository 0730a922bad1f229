// The page where a person tries changes of the water.

export const whatIf = {};
