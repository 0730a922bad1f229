namespace PlantWatch.Storage;

/// <summary>What the readings of one span come to. Sum, min and max speak of the good readings where there is one, else of all. The default holds none.</summary>
internal struct Bucket
{
    public long Start;
    public long Count;
    public long Good;
    public double Sum;
    public double Min;
    public double Max;
    public double Last;

    /// <summary>A bucket of one reading.</summary>
    public static Bucket Of(long start, double value, bool good) =>
        new() { Start = start, Count = 1, Good = good ? 1 : 0, Sum = value, Min = value, Max = value, Last = value };

    public readonly double Mean => Sum / (Good > 0 ? Good : Count);

    /// <summary>Joins what comes later in time. The start stays, unless nothing was there yet.</summary>
    public void Append(in Bucket later)
    {
        if (Count == 0)
        {
            this = later;
            return;
        }
        if (Good > 0 == later.Good > 0)
        {
            Sum += later.Sum;
            if (later.Min < Min) Min = later.Min;
            if (later.Max > Max) Max = later.Max;
        }
        else if (later.Good > 0)
        {
            (Sum, Min, Max) = (later.Sum, later.Min, later.Max);
        }
        Count += later.Count;
        Good += later.Good;
        Last = later.Last;
    }
}
