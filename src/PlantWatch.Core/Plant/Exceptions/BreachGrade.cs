namespace PlantWatch.Core.Plant.Exceptions;

/// <summary>How grave a breach is: by the gravest rule that it broke. The default is not stated.</summary>
public enum BreachGrade
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>An operating limit.</summary>
    Operating,
    /// <summary>A limit that closes a pool.</summary>
    Closure,
    /// <summary>A stop that always holds.</summary>
    Stop,
    /// <summary>A limit on what a laboratory counts.</summary>
    Laboratory,
}
