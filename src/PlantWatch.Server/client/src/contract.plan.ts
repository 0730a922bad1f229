// The shapes of the server's Api/Contracts.Plan.cs.

export {};
