// The shapes of the server's Api/Contracts.Dose.cs.

export {};
