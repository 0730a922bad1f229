// The shapes of the server's Api/Contracts.Incident.cs.

export {};
