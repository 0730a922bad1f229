import type { Said } from './contract';

// The plant file, as the server's Contracts.PlantFile.cs writes it.
export type Json = string | number | boolean | null | Json[] | { [key: string]: Json };
export interface FieldSaid { field: string; code: string; text: string }
export interface PlantFileProblem { line: number; key: string; text: string; file: string | null }
export interface PlantFileView {
  name: string; exists: boolean; inForce: boolean; writable: boolean; fault: FieldSaid | null; text: string; digest: string; tree: Json; problems: PlantFileProblem[];
}
export interface PlantFileEdit { do: 'set' | 'add' | 'remove'; path: string; value?: Json }
export interface DiffLine { fate: 'same' | 'removed' | 'added'; line: number; text: string }
export interface PlantFileCheck { text: string; tree: Json; problems: PlantFileProblem[]; diff: DiffLine[]; effects: Said[]; refused: FieldSaid | null }
