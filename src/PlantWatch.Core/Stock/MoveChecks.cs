using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Stock;

/// <summary>What is impossible about a row of the stock book, by field; null when nothing is. What was not asked from the beginning is asked at the door, by the MoveObjection of the plant.</summary>
public static class MoveChecks
{
    // Litres or kilograms: some three tankers (our choice, to catch a slip of the finger and nothing else).
    private const double Most = 100_000;

    // A lorry of the smallest cans (our choice, likewise).
    private const int MostContainers = 10_000;

    // Clocks of phones differ by minutes; what is older than a month is a correction and no row (our choice).
    private static readonly TimeSpan ClockSkew = TimeSpan.FromMinutes(5);
    private static readonly TimeSpan Oldest = TimeSpan.FromDays(30);

    /// <summary>Looks at a row.</summary>
    /// <param name="move">The row.</param>
    /// <param name="tank">The pump whose tank it is about; null for the store.</param>
    /// <param name="now">When it came in.</param>
    public static (string Field, Reason Why)? Of(StockMove move, PumpPlan? tank, Instant now)
    {
        ArgumentNullException.ThrowIfNull(move);
        return OfAct(move) ?? OfAmount(move, tank) ?? OfLabel(move) ?? OfTime(move, now) ?? OfPeople(move) ?? OfCorrection(move);
    }

    private static (string, Reason)? OfAct(StockMove move) => move.Act switch
    {
        StockAct.Delivered or StockAct.Counted => null,
        StockAct.Refilled => move.PumpId is null ? ("pumpId", Reason.Of("field.required")) : null,
        _ => ("act", Reason.Of("field.required")),
    };

    private static (string, Reason)? OfAmount(StockMove move, PumpPlan? tank)
    {
        if (!(move.Amount <= Most) || move.Amount < 0 || (move.Amount == 0 && move.Act != StockAct.Counted)) return ("amount", Reason.Of("stock.amount_impossible"));
        if (move.Containers is < 1 or > MostContainers) return ("containers", Reason.Of("stock.containers_impossible"));
        // A tank that is topped up while it is emptied takes a little more than it holds; what went into a wrong one is told whatever it was.
        return tank?.TankLitres is { } litres && move.Amount > 1.1 * litres && !move.WentIn ? ("amount", Reason.Of("stock.more_than_the_tank", litres)) : null;
    }

    private static (string, Reason)? OfLabel(StockMove move)
    {
        if (move.Strength is { } percent && !(percent > 0 && percent <= 100)) return ("strength", Reason.Of("stock.strength_impossible"));
        if (move.MadeOn is { } day && (day.Year < 2000 || day.DayNumber > DayNumber(move.HappenedAt) + 1)) return ("madeOn", Reason.Of("stock.made_astray"));
        return move.Price is { } price && !(price >= 0 && price <= 1e9) ? ("price", Reason.Of("stock.price_impossible")) : null;
    }

    private static int DayNumber(Instant at) => DateOnly.FromDateTime(at.ToDateTimeOffset().UtcDateTime).DayNumber;

    private static (string, Reason)? OfTime(StockMove move, Instant now) =>
        move.HappenedAt > now + ClockSkew || move.HappenedAt < now - Oldest ? ("happenedAt", Reason.Of("stock.time_impossible")) : null;

    // A count hurts nobody when one person is mistaken; what goes into a tank or onto a shelf can.
    private static (string, Reason)? OfPeople(StockMove move)
    {
        if (string.IsNullOrWhiteSpace(move.By)) return ("by", Reason.Of("field.required"));
        if (move.Act == StockAct.Counted) return null;
        if (string.IsNullOrWhiteSpace(move.CheckedBy)) return ("checkedBy", Reason.Of("field.required"));
        return PersonNames.AreOfSameLetters(move.By, move.CheckedBy) ? ("checkedBy", Reason.Of("stock.two_people")) : null;
    }

    private static (string, Reason)? OfCorrection(StockMove move) =>
        move.Corrects is not null && string.IsNullOrWhiteSpace(move.CorrectionReason) ? ("correctionReason", Reason.Of("field.required")) : null;
}
