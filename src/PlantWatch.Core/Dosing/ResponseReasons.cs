using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Dosing;

/// <summary>What a retest says of a dose, as reasons for people.</summary>
public static class ResponseReasons
{
    /// <summary>One figure in words.</summary>
    public static Reason Saying(this FigureResponse figure)
    {
        Fact[] facts = [figure.Measurand.Key(), figure.Predicted, figure.Measured, 2 * figure.Uncertainty, figure.Measurand.Unit()];
        return figure.Word switch
        {
            ResponseWord.AsPredicted => Reason.Of("response.as_predicted", facts),
            ResponseWord.Less => Reason.Of("response.less", facts),
            ResponseWord.More => Reason.Of("response.more", facts),
            ResponseWord.OtherWay => Reason.Of("response.other_way", facts),
            _ => Reason.Of("response.not_comparable", facts),
        };
    }
}
