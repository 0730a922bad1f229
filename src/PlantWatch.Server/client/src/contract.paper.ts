// Mirrors the server's Contracts.Paper.cs.

export interface PaperCell { was: string[]; text: string; outside: boolean; note: string | null }
export interface PaperColumn { name: string; unit: string; figures: boolean }
export interface PaperTable { caption: string; columns: PaperColumn[]; rows: PaperCell[][] }
export interface PaperBlock { text: string | null; facts: { name: string; value: string }[] | null; table: PaperTable | null }
export interface PaperSection { heading: string; level: number; blocks: PaperBlock[] }

/** A sheet: what a page of ours shows of it. */
export interface PaperView { kind: string; title: string; foot: string; sections: PaperSection[] }
