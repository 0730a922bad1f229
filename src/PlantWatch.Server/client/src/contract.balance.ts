// The shapes of the server's Api/Contracts.Balance.cs.

export {};
