namespace PlantWatch.Core.Plans;

/// <summary>What a person answers for. The default is an operator, who may least.</summary>
public enum PersonRole
{
    /// <summary>Runs the water: tests, doses, acknowledges.</summary>
    Operator = 0,
    /// <summary>Looks after pumps, probes and filters.</summary>
    Maintenance,
    /// <summary>Duty manager: opens and closes pools.</summary>
    DutyManager,
    /// <summary>Plant engineer: sets limits, confirms packs, approves calibrations.</summary>
    Engineer,
    /// <summary>Answers for the plant as a whole; may edit the stops that always hold.</summary>
    Administrator,
}

/// <summary>A person of the plant file. Accounts with passwords come apart from this: it says who is who, not who is logged in.</summary>
/// <param name="Id">Key in the plant file.</param>
/// <param name="Name">Name as it is signed with.</param>
/// <param name="Role">What the person answers for.</param>
public sealed record PersonPlan(string Id, string Name, PersonRole Role)
{
    /// <summary>Address to which alarms are written; null when none is stated.</summary>
    public string? Email { get; init; }

    /// <summary>May sign that a closed pool opens again.</summary>
    public bool MayReopen => Role >= PersonRole.DutyManager;

    /// <summary>May confirm limits and loosen one, with a reason.</summary>
    public bool MaySetLimits => Role >= PersonRole.Engineer;

    /// <summary>May edit a stop, with a reason.</summary>
    public bool MayEditStops => Role == PersonRole.Administrator;
}

/// <summary>The people of a plan.</summary>
public static class People
{
    /// <summary>The person who signs with a name; null when the plan names nobody like that. Case and outer blanks do not matter.</summary>
    public static PersonPlan? Named(this System.Collections.Immutable.ImmutableArray<PersonPlan> people, string? name)
    {
        if (people.IsDefaultOrEmpty || name is null) return null;
        foreach (var person in people)
            if (string.Equals(person.Name, name.Trim(), StringComparison.OrdinalIgnoreCase)) return person;
        return null;
    }
}
