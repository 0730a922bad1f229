using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Dosing.Volume;

/// <summary>What doses tell of a volume, and what to do about it, as reasons for people.</summary>
public static class VolumeReasons
{
    /// <summary>The answer first, then what to do, then what it rests on.</summary>
    /// <param name="volume">The answer.</param>
    /// <param name="leftOut">Retests of chlorine that were left out of it.</param>
    public static ImmutableArray<Reason> Says(this EffectiveVolume volume, int leftOut)
    {
        ArgumentNullException.ThrowIfNull(volume);
        var says = ImmutableArray.CreateBuilder<Reason>();
        says.Add(Answer(volume));
        if (volume.Word is VolumeWord.More or VolumeWord.Less)
        {
            says.Add(Reason.Of(volume.Word == VolumeWord.More ? "volume.do_more" : "volume.do_less"));
            says.Add(Reason.Of(volume.Signs.Select(s => s.Sign.ProductId).Distinct().Count() == 1 ? "volume.one_product" : "volume.several_products"));
        }

        if (volume.Word != VolumeWord.TooFew && volume.Signs.Count(s => s.Apart) is > 0 and var apart) says.Add(Reason.Of("volume.apart", apart));
        if (volume.Signs.Any(s => s.Sign.Measurand == Measurand.TotalAlkalinity)) says.Add(Reason.Of("volume.acid_eats_alkalinity"));
        if (leftOut > 0) says.Add(Reason.Of("volume.chlorine_left_out", leftOut));
        return says.ToImmutable();
    }

    private static Reason Answer(EffectiveVolume volume) => volume.Word == VolumeWord.TooFew
        ? Reason.Of("volume.too_few", volume.Signs.Length, EffectiveVolume.Fewest)
        : Reason.Of((volume.Word, double.IsFinite(volume.High)) switch
        {
            (VolumeWord.Agrees, true) => "volume.agrees",
            (VolumeWord.Agrees, false) => "volume.agrees_open",
            (VolumeWord.More, true) => "volume.more",
            (VolumeWord.More, false) => "volume.more_open",
            _ => "volume.less",
        }, volume.CubicMetres, volume.Low, double.IsFinite(volume.High) ? volume.High : 0, volume.Stated, volume.Signs.Length);
}
