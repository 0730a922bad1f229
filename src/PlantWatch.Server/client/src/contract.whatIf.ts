// The shapes of the server's Api/Contracts.WhatIf.cs.

export {};
