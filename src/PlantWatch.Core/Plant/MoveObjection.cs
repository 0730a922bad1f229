using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Stock;

namespace PlantWatch.Core.Plant;

/// <summary>What speaks against a row of the stock book that older journals took. Asked at the door: a journal of before it was asked keeps what was taken.</summary>
public static class MoveObjection
{
    /// <summary>Least amount of what came or was filled, in litres or kilograms: a millilitre, a gram (our choice, because no container is smaller and the price of a unit stays a number).</summary>
    public const double Least = 0.001;

    /// <summary>Why a row cannot be written so; null when nothing of this speaks against it, or it is in the book already.</summary>
    public static Outcome.TurnedDown? Of(CircuitState state, StockMove move)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(move);
        // Sent again: other words are said of that.
        if (state.Moves.Any(m => m.Id == move.Id)) return null;
        // Taken back twice, nobody could say which of the two is right.
        if (state.Moves.Any(m => m.Corrects is { } done && done == move.Corrects)) return No(TurnedDownKind.Conflict, "corrects", "stock.corrected_already");
        if (!PersonNames.SaysSomebody(move.By)) return No(TurnedDownKind.Invalid, "by", "field.required");
        return move.Act == StockAct.Counted ? null : OfWhatCame(move);
    }

    private static Outcome.TurnedDown? OfWhatCame(StockMove move)
    {
        if (move.Amount < Least) return No(TurnedDownKind.Invalid, "amount", "stock.amount_impossible");
        if (!PersonNames.SaysSomebody(move.CheckedBy)) return No(TurnedDownKind.Invalid, "checkedBy", "field.required");
        return PersonNames.AreSame(move.By, move.CheckedBy) ? No(TurnedDownKind.Invalid, "checkedBy", "stock.two_people") : null;
    }

    private static Outcome.TurnedDown No(TurnedDownKind kind, string field, string code) => Outcome.TurnedDown.Because(kind, field, Reason.Of(code));
}
