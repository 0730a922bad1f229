using PlantWatch.Core.Dosing;
using PlantWatch.Core.Dosing.Volume;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Units;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>The volume of the plant file held against what doses and retests of the record tell of.</summary>
internal static class VolumeViews
{
    /// <summary>How far back doses are looked at: pools are rebuilt, tanks are added.</summary>
    public static TimeSpan Lookback { get; } = TimeSpan.FromDays(365);

    public static VolumeView Of(CircuitPlan circuit, IEnumerable<GivenDose> given, IEnumerable<DoseResponse> answers, UnitSystem units)
    {
        var doses = given.ToList();
        var corrected = doses.Select(d => d.Corrects).OfType<Guid>().ToHashSet();
        var standing = doses.Where(d => !corrected.Contains(d.Id)).ToDictionary(d => d.Id);
        var figures = answers.Where(r => standing.ContainsKey(r.DoseId)).SelectMany(r => r.Figures.Select(f => (Dose: standing[r.DoseId], r.SampledAt, Figure: f))).ToList();
        var volume = EffectiveVolume.Of(figures.Select(f => VolumeSign.Of(f.Dose, f.SampledAt, f.Figure)).OfType<VolumeSign>(), DoseVolume.WholeOf(circuit));
        var (say, amounts) = (Reader.Words.In(units), new AmountWords(units, Reader.Here.Language));
        Amount? Water(double m3) => double.IsFinite(m3) && m3 > 0 ? amounts.Water(m3) : null;
        return new(
            volume.Word, amounts.Water(volume.Stated), Water(volume.CubicMetres), Water(volume.Low), Water(volume.High),
            [.. volume.Signs.Reverse().Select(s => new VolumeSignView(s.Sign.At, standing[s.Sign.DoseId].Product, s.Sign.Measurand, Water(s.CubicMetres), s.Weight, s.Apart))],
            say.Say(volume.Says(figures.Count(f => f.Figure.Measurand == Measurand.FreeChlorine))));
    }
}
