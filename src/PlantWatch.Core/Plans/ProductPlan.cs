namespace PlantWatch.Core.Plans;

/// <summary>A chemical product at hand.</summary>
/// <param name="Id">Key in the plant file.</param>
/// <param name="Name">As on the drum.</param>
/// <param name="Kind">What it is chemically.</param>
/// <param name="Strength">Strength in per cent as the label gives it; null when unknown.</param>
public sealed record ProductPlan(string Id, string Name, ProductKind Kind, double? Strength)
{
    /// <summary>What the per cent of <see cref="Strength"/> and <see cref="Assay"/> counts.</summary>
    public StrengthMeaning Means { get; init; }

    /// <summary>The day <see cref="Strength"/> held: made or delivered. Null when not known, and then no loss of strength can be taken off.</summary>
    public DateOnly? StrengthOn { get; init; }

    /// <summary>Strength in per cent as it was assayed here; it goes before <see cref="Strength"/>. Null when it was not.</summary>
    public double? Assay { get; init; }

    /// <summary>The day of the assay.</summary>
    public DateOnly? AssayedOn { get; init; }

    /// <summary>Density in kg/L; null when not given.</summary>
    public double? Density { get; init; }

    /// <summary>Temperature it is stored at in degC; null when not given.</summary>
    public double? StoredAt { get; init; }

    /// <summary>Price of a kg in the plant's money; null when not given or given by the litre.</summary>
    public double? PricePerKilogram { get; init; }

    /// <summary>Price of a litre in the plant's money; null when not given or given by the kg.</summary>
    public double? PricePerLitre { get; init; }

    /// <summary>In which form it comes.</summary>
    public ProductForm Form { get; init; }

    /// <summary>Where it is added.</summary>
    public DosingPlace AddedTo { get; init; }

    /// <summary>How it is added.</summary>
    public DosingWay AddedBy { get; init; }

    /// <summary>Days from an order to its delivery, as the plant file has it; null when it says nothing.</summary>
    public double? DeliveryDays { get; init; }

    /// <summary>What people call the place where it is stored; null when the plant file says nothing.</summary>
    public string? Store { get; init; }

    /// <summary>The batch that <see cref="Strength"/> was read from, where a delivery goes before the plant file; null otherwise. No matter of the plant file.</summary>
    public string? FromBatch { get; init; }
}

/// <summary>What the per cent on a label counts.</summary>
public enum StrengthMeaning
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>g in 100 g: of the substance, or of available chlorine where a product is sold by it.</summary>
    Weight,
    /// <summary>Trade per cent: g of available chlorine in 100 mL.</summary>
    Trade,
    /// <summary>g of sodium hypochlorite in 100 g.</summary>
    SodiumHypochlorite,
}

/// <summary>The form a product comes in.</summary>
public enum ProductForm
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Liquid.</summary>
    Liquid,
    /// <summary>Granules.</summary>
    Granules,
    /// <summary>Powder.</summary>
    Powder,
    /// <summary>Tablets or sticks.</summary>
    Tablets,
    /// <summary>Gas under pressure.</summary>
    Gas,
}

/// <summary>Where a product is added.</summary>
public enum DosingPlace
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Into the pool.</summary>
    Pool,
    /// <summary>Into the balance tank.</summary>
    BalanceTank,
    /// <summary>Into the treated water on its way to the pool.</summary>
    ReturnLine,
}

/// <summary>How a product is added.</summary>
public enum DosingWay
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>By a person.</summary>
    Hand,
    /// <summary>By a pump, a feeder or a gas doser.</summary>
    Pump,
}
