// An amount for people, as the server's Contracts.Units.cs writes it: `text` in the units of the plant, `inSi` beside it (the same text in a metric plant).
export interface Amount { value: number; unit: string; text: string; inSi: string }
