namespace PlantWatch.Storage;

/// <summary>Key of one partition of storage: the circuit's id. The default names no partition and throws when read.</summary>
public readonly record struct PartitionKey
{
    private readonly string? _value;

    /// <summary>Makes a key.</summary>
    /// <exception cref="ArgumentException">The text is empty.</exception>
    public PartitionKey(string value)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(value);
        _value = value;
    }

    /// <summary>The circuit's id.</summary>
    /// <exception cref="InvalidOperationException">This is the default.</exception>
    public string Value => _value ?? throw new InvalidOperationException("this partition key was never set");

    /// <inheritdoc/>
    public override string ToString() => Value;
}
