using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes.Calibrating;

/// <summary>When a probe will want service: the times at which a figure of it is expected to leave what is allowed.</summary>
/// <param name="Why">What the forecast rests on, or why there is none.</param>
/// <param name="Earliest">The limit may be reached from here on: the figure and twice its standard uncertainty touch it. Null when not within the horizon.</param>
/// <param name="Likely">The figure itself is expected to reach the limit. Null when not within the horizon.</param>
/// <param name="Latest">By now it has been reached even when the figure is less by twice its standard uncertainty. Null when not within the horizon.</param>
public sealed record ServiceOutlook(Reason Why, Instant? Earliest, Instant? Likely, Instant? Latest);

/// <summary>Forecasts the next service of a probe from where it stands and how fast it moves. Never later than the interval of the plant file asks for: that date stands beside it.</summary>
public static class ServiceForecast
{
    /// <summary>Nothing is foretold beyond this many days: electrodes are serviced or replaced sooner (common practice).</summary>
    public const double HorizonDays = 180;

    private const double Coverage = 2;

    /// <summary>When the bias will reach the limit of maintenance on either side.</summary>
    /// <param name="bias">Bias now, in the measurand's unit; unknown gives no forecast.</param>
    /// <param name="drift">Its rate, unit a day; unknown means that only wandering is foreseen.</param>
    /// <param name="limit">The limit, above 0.</param>
    /// <param name="wander">Variance that a random walk adds, unit squared a day, 0 or more.</param>
    /// <param name="at">The time at which bias and drift hold.</param>
    public static ServiceOutlook ByBias(Estimate bias, Estimate drift, double limit, double wander, Instant at) =>
        limit > 0 ? Of(bias, drift, new(-limit, limit), wander, at) : Unknown();

    /// <summary>When the slope of a pH electrode will leave what is allowed.</summary>
    /// <param name="slope">Slope now as a share of the ideal, 1 = 100 %.</param>
    /// <param name="change">Its rate, share a day.</param>
    /// <param name="allowed">What is allowed, as shares.</param>
    /// <param name="at">The time at which they hold.</param>
    public static ServiceOutlook BySlope(Estimate slope, Estimate change, ValueRange allowed, Instant at) => Of(slope, change, allowed, 0, at);

    private static ServiceOutlook Of(Estimate figure, Estimate rate, ValueRange allowed, double wander, Instant at)
    {
        if (!figure.IsKnown || !(wander >= 0)) return Unknown();
        var course = new Course(figure, rate, allowed, wander);
        if (course.Room(0) <= 0) return new(Reason.Of("forecast.reached"), at, at, course.First(1, at));
        var (earliest, likely, latest) = (course.First(-1, at), course.First(0, at), course.First(1, at));
        return new(Why(rate, earliest), earliest, likely, latest);
    }

    private static Reason Why(Estimate rate, Instant? earliest) =>
        earliest is null ? Reason.Of("forecast.not_in_sight", HorizonDays)
        : !rate.IsKnown ? Reason.Of("forecast.no_rate")
        : Math.Abs(rate.Value) <= rate.Expanded ? Reason.Of("forecast.rate_unsure", AMonth.Days * rate.Value, AMonth.Days * rate.Expanded)
        : Reason.Of("forecast.by_rate", AMonth.Days * rate.Value, AMonth.Days * rate.Expanded);

    private static ServiceOutlook Unknown() => new(Reason.Of("forecast.too_little_known"), null, null, null);

    /// <summary>Where a figure is expected on a later day, and how surely.</summary>
    private readonly record struct Course(Estimate Figure, Estimate Rate, ValueRange Allowed, double Wander)
    {
        private const double Step = 0.25;

        // What is left to the nearer limit; negative beyond it.
        public double Room(double days)
        {
            var value = Figure.Value + (Rate.Value * days);
            return Math.Min(value - Allowed.Low, Allowed.High - value);
        }

        public Instant? First(int side, Instant at)
        {
            for (double days = 0; days <= HorizonDays; days += Step)
                if (Left(days, side) <= 0) return at + TimeSpan.FromDays(days == 0 ? 0 : Narrowed(days - Step, days, side));
            return null;
        }

        private double Left(double days, int side)
        {
            var (u, rate) = (Figure.StandardUncertainty, Rate.StandardUncertainty * days);
            return Room(days) + (side * Coverage * Math.Sqrt((u * u) + (rate * rate) + (Wander * days)));
        }

        private double Narrowed(double inside, double beyond, int side)
        {
            for (var i = 0; i < 20; i++)
            {
                var middle = (inside + beyond) / 2;
                if (Left(middle, side) > 0) inside = middle;
                else beyond = middle;
            }

            return beyond;
        }
    }
}
