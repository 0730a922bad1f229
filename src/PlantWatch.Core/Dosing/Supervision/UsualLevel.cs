namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>A mean in which what is old gives way.</summary>
/// <param name="keeps">Part of the weight of all before that stays when one more comes.</param>
internal sealed class UsualLevel(double keeps)
{
    private double _sum, _weight;

    public void Keep(Tape tape) => (_sum, _weight) = (tape.Next(_sum), tape.Next(_weight));

    /// <summary>Takes one more in; the mean after it.</summary>
    public double Take(double value)
    {
        (_sum, _weight) = ((_sum * keeps) + value, (_weight * keeps) + 1);
        return _sum / _weight;
    }
}
