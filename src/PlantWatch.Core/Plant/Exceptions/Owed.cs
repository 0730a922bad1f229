using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant.Exceptions;

/// <summary>What an open breach waits for. The default is nothing.</summary>
public enum OwedAct
{
    /// <summary>Nothing: it is closed.</summary>
    Nothing = 0,
    /// <summary>Act as the rule says, and test again.</summary>
    ActAndRetest,
    /// <summary>Something was done: test whether it helped.</summary>
    Retest,
    /// <summary>The test is inside and the probe still reads outside a stop or a closure limit: find which is right.</summary>
    Settle,
    /// <summary>A resample for the laboratory.</summary>
    Resample,
    /// <summary>What the incident's plan asks for, by its own clock; none of this line's runs.</summary>
    Incident,
}

/// <summary>Who owes what by when. The default owes nothing.</summary>
/// <param name="Act">What.</param>
/// <param name="By">Until when; never where another clock runs.</param>
/// <param name="Who">Who had it in hand last; null while nobody has: then the operator on duty.</param>
public readonly record struct Owed(OwedAct Act, Instant By, string? Who)
{
    /// <summary>Its time is past.</summary>
    public bool IsOverdue(Instant now) => By.IsSet && now > By;
}
