namespace PlantWatch.Core.Quantities;

/// <summary>What is measured, by a probe or by hand. The basis is part of the meaning: chlorine as Cl2, alkalinity and hardness as CaCO3.</summary>
public enum Measurand
{
    /// <summary>Nothing: the value of a measurand that was never set.</summary>
    None = 0,
    /// <summary>pH on the activity scale.</summary>
    Ph,
    /// <summary>Oxidation-reduction potential in mV against the probe's own reference electrode.</summary>
    Orp,
    /// <summary>Water temperature in degC.</summary>
    Temperature,
    /// <summary>Conductivity in microsiemens per centimetre.</summary>
    Conductivity,
    /// <summary>Free chlorine in mg/L as Cl2.</summary>
    FreeChlorine,
    /// <summary>Total chlorine in mg/L as Cl2.</summary>
    TotalChlorine,
    /// <summary>Combined chlorine in mg/L as Cl2: total less free of the same sample.</summary>
    CombinedChlorine,
    /// <summary>Total alkalinity in mg/L as CaCO3.</summary>
    TotalAlkalinity,
    /// <summary>Calcium hardness in mg/L as CaCO3.</summary>
    CalciumHardness,
    /// <summary>Cyanuric acid in mg/L.</summary>
    CyanuricAcid,
    /// <summary>Total dissolved solids in mg/L.</summary>
    DissolvedSolids,
    /// <summary>Sample-cell flow switch: 1 with flow, 0 without.</summary>
    SampleFlow,
    /// <summary>Water that circulates through the treatment, in m3/h.</summary>
    CirculationFlow,
    /// <summary>Pressure lost across a filter, in kPa: before it less behind it.</summary>
    FilterPressure,
    /// <summary>Turbidity in NTU, by a nephelometer.</summary>
    Turbidity,
    /// <summary>Total bromine in mg/L as Br2: free and combined, which DPD 1 tells together.</summary>
    Bromine,
}

/// <summary>The fixed facts of each measurand: its unit as written for people, and what is physically possible.</summary>
public static class Measurands
{
    /// <summary>The unit in which PlantWatch keeps and shows the measurand; empty for a switch.</summary>
    public static string Unit(this Measurand measurand) => measurand switch
    {
        Measurand.Ph => "pH",
        Measurand.Orp => "mV",
        Measurand.Temperature => "degC",
        Measurand.Conductivity => "uS/cm",
        Measurand.CirculationFlow => "m3/h",
        Measurand.FilterPressure => "kPa",
        Measurand.Turbidity => "NTU",
        Measurand.SampleFlow or Measurand.None => "",
        _ => "mg/L",
    };

    /// <summary>Its word in keys and files, such as <c>free_chlorine</c>.</summary>
    public static string Key(this Measurand measurand) => System.Text.Json.JsonNamingPolicy.SnakeCaseLower.ConvertName(measurand.ToString());

    /// <summary>True for what tells of the plant and not of the water: nobody tests it by hand, and its jumps are its job.</summary>
    public static bool IsOfPlant(this Measurand measurand) => measurand is Measurand.SampleFlow or Measurand.CirculationFlow or Measurand.FilterPressure;

    /// <summary>True when nought means that there is none of it, so that a share of a reading means something. The noughts of degrees Celsius, pH and mV are agreed upon.</summary>
    public static bool HasTrueNought(this Measurand measurand) => measurand is not (Measurand.None or Measurand.Temperature or Measurand.Ph or Measurand.Orp);

    /// <summary>Decimals that people write the measurand with.</summary>
    public static int Decimals(this Measurand measurand) => measurand switch
    {
        Measurand.Ph or Measurand.FreeChlorine or Measurand.TotalChlorine or Measurand.CombinedChlorine or Measurand.Turbidity => 2,
        Measurand.Temperature or Measurand.CirculationFlow or Measurand.FilterPressure or Measurand.Bromine => 1,
        _ => 0,
    };

    /// <summary>The widest range that water in a pool plant can show; outside it a number is a fault of wiring, unit or typing.</summary>
    /// <remarks>Common practice, deliberately wide: pH 0 to 14; ORP -1000 to 1200 mV; -5 to 110 degC; a circulation up to 10 000 m3/h, and below nil as flow meters creep; chlorine up to 200 mg/L covers superchlorination by hand, and bromine as much by the mole; turbidity up to what nephelometers count.</remarks>
    public static ValueRange Possible(this Measurand measurand) => measurand switch
    {
        Measurand.Ph => new(0, 14),
        Measurand.Orp => new(-1000, 1200),
        Measurand.Temperature => new(-5, 110),
        Measurand.Conductivity => new(0, 200_000),
        Measurand.FreeChlorine or Measurand.TotalChlorine or Measurand.CombinedChlorine => new(0, 200),
        Measurand.Bromine => new(0, 450),
        Measurand.TotalAlkalinity or Measurand.CalciumHardness => new(0, 5000),
        Measurand.CyanuricAcid => new(0, 1000),
        Measurand.DissolvedSolids => new(0, 100_000),
        Measurand.SampleFlow => new(0, 1),
        Measurand.CirculationFlow => new(-100, 10_000),
        Measurand.FilterPressure => new(-50, 1000),
        Measurand.Turbidity => new(0, 4000),
        _ => new(0, 0),
    };
}
