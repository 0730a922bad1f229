namespace PlantWatch.Core.Probes;

/// <summary>What one pair shows the bank: the reading less what is known without it, where it looks, and how sure both are.</summary>
/// <param name="Row">How bias, rate, gain, reference and passing enter.</param>
/// <param name="Seen">The reading less what does not depend on them.</param>
/// <param name="Variance">Of what neither test nor reading can help.</param>
/// <param name="WildRow">The same, were the test a slip: what the pool usually is.</param>
/// <param name="WildVariance">The variance then.</param>
/// <param name="Slip">How likely a test is a slip, before it is compared.</param>
/// <param name="SlipOdds">By how much the test alone, beside the pool's usual values, speaks for a slip.</param>
internal readonly record struct Sight(Five Row, double Seen, double Variance, Five WildRow, double WildVariance, double Slip, double SlipOdds);

/// <summary>
/// All accounts of a probe's past that are still worth keeping: it is stable or drifts since some day; a leap was the probe's or the water's; the tests are sound, one was a slip, or
/// the whole lot is bad. Each check multiplies an account's probability by how well it foresaw the check.
/// </summary>
/// <remarks>A bank of Kalman filters with pruning and merging: Y. Bar-Shalom, X. R. Li, T. Kirubarajan, Estimation with Applications to Tracking and Navigation (2001), chapter 11.</remarks>
internal sealed class HypothesisBank
{
    /// <summary>Accounts kept at most.</summary>
    public const int Most = 10;

    // Less likely than this is forgotten.
    private const double Negligible = 1e-6;

    private readonly TrustModel _model;
    private readonly Hypothesis[] _next = new Hypothesis[10 * Most];
    private Hypothesis[] _held = new Hypothesis[Most];
    private int _count, _made;
    private double _likeliest, _eased, _nearest;

    public HypothesisBank(TrustModel model)
    {
        _model = model;
        Begin(model.UncheckedShare);
    }

    public ReadOnlySpan<Hypothesis> All => _held.AsSpan(0, _count);

    /// <summary>Starts anew: what was learned of the reference stays where tests keep their own error.</summary>
    public void Restart(bool keepsReference)
    {
        var (mean, variance) = Moments(Belief.Reference);
        Begin(_model.BadServiceShare);
        if (!keepsReference) return;
        for (var i = 0; i < _count; i++) _held[i].Belief.Set(Belief.Reference, mean, variance);
    }

    /// <summary>Lets time pass.</summary>
    /// <param name="days">How much.</param>
    /// <param name="scatter">How much more or less than expected this probe scatters, as a ratio of variances.</param>
    public void Advance(double days, double scatter)
    {
        if (days <= 0) return;
        for (var i = 0; i < _count; i++) Advance(ref _held[i], days, scatter);
    }

    /// <summary>The signal leapt as water cannot: most likely the probe did, and its bias with it.</summary>
    public void Leap(double by)
    {
        (_made, _likeliest) = (0, 0);
        for (var i = 0; i < _count; i++)
        {
            var moved = _held[i];
            moved.Weight *= 1 - _model.LeapOfWater;
            moved.Belief.Shift(Belief.Bias, by);
            moved.Belief.Loosen(Belief.Bias, _model.LeapSpread * _model.LeapSpread * by * by);
            Add(moved, moved.Weight);
            var stayed = _held[i];
            stayed.Weight *= _model.LeapOfWater;
            stayed.Apart = ApartFor;
            Add(stayed, stayed.Weight);
        }

        Keep();
    }

    /// <summary>Cleaned: no drift goes on, and the bias may have moved.</summary>
    public void Cleaned()
    {
        (_made, _likeliest) = (0, 0);
        for (var i = 0; i < _count; i++)
        {
            var cleaned = _held[i];
            (cleaned.DriftDays, cleaned.Fast) = (-1, false);
            cleaned.Belief.Set(Belief.Rate, 0, 0);
            cleaned.Belief.Loosen(Belief.Bias, _model.UncheckedSd * _model.UncheckedSd);
            Add(cleaned, cleaned.Weight);
        }

        Keep();
    }

    /// <summary>The tests come from another instrument: what they are off by together is open again.</summary>
    public void ForgetReference()
    {
        for (var i = 0; i < _count; i++) _held[i].Belief.Set(Belief.Reference, 0, _model.Shared * _model.Shared);
    }

    /// <summary>Forgets all accounts; <see cref="Put"/> has to follow.</summary>
    public void Clear() => _count = 0;

    /// <summary>Puts an account back that was saved.</summary>
    public void Put(in Hypothesis account) => _held[_count++] = account;

    /// <summary>Moves the bias by a known amount: a correction changed.</summary>
    public void Shift(double amount)
    {
        for (var i = 0; i < _count; i++) _held[i].Belief.Shift(Belief.Bias, amount);
    }

    /// <summary>Takes a check in; the newest bit of the doubts is its own.</summary>
    /// <param name="sight">What it shows.</param>
    /// <param name="days">Days since the one before.</param>
    /// <param name="watched">The signal was watched all the while, so that a leap of it would have been seen.</param>
    public void Take(in Sight sight, double days, bool watched)
    {
        for (var i = 0; i < _count; i++)
        {
            _held[i].Doubted <<= 1;
            if (_held[i].Apart > 0) _held[i].Apart--;
            _held[i].JustJumped = false;
        }

        _nearest = double.PositiveInfinity;
        Branch(sight, days, watched);
        // So far off that every account's density is too small for a number: all are eased alike, and the account that foresaw it least badly still stands out.
        if (_made == 0 && double.IsFinite(_nearest)) Branch(sight, days, watched, _nearest);
        Keep();
    }

    private void Branch(in Sight sight, double days, bool watched, double eased = 0)
    {
        (_made, _likeliest, _eased) = (0, 0, eased);
        for (var i = 0; i < _count; i++) Branch(_held[i], sight, days, watched);
    }

    private const byte ApartFor = 6;

    private void Branch(in Hypothesis held, in Sight sight, double days, bool watched)
    {
        var onset = held.Drifts ? 0 : Within(_model.OnsetPerDay, days);
        var lot = _model.LotPerDay <= 0 ? 0 : Within(held.LotOff ? 1 / _model.LotDays : _model.LotPerDay, days);
        var jump = watched ? Within(_model.UnseenPerDay, days) : _model.Unwatched;
        // The plain one first: beside it most others need not be worked out.
        var goes = held;
        goes.Weight = held.Weight * (1 - onset - lot - jump);
        See(goes, sight);

        var jumps = held;
        jumps.Weight = held.Weight * jump;
        (jumps.Apart, jumps.JustJumped) = (ApartFor, true);
        jumps.Belief.Loosen(Belief.Bias, _model.JumpSd * _model.JumpSd);
        See(jumps, sight);

        if (lot > 0)
        {
            var turns = held;
            turns.Weight = held.Weight * lot;
            turns.LotOff = !held.LotOff;
            turns.Belief.Set(Belief.Passing, 0, held.LotOff ? 0 : _model.LotSd * _model.LotSd);
            See(turns, sight);
        }

        if (onset > 0) Begins(held, sight, onset);
    }

    private void Begins(in Hypothesis held, in Sight sight, double onset)
    {
        var begins = held;
        begins.DriftDays = 0;
        foreach (var fast in (ReadOnlySpan<bool>)[false, true])
        {
            var times = fast ? _model.FastTimes : 1;
            begins.Fast = fast;
            begins.Weight = held.Weight * onset * (fast ? _model.FastShare : 1 - _model.FastShare);
            begins.Belief.Set(Belief.Rate, times * _model.RateMean, times * times * _model.RateSd * _model.RateSd);
            See(begins, sight);
        }
    }

    private void See(in Hypothesis account, in Sight sight)
    {
        var (mean, variance) = account.Belief.Along(sight.Row);
        var total = variance + sight.Variance;
        var innovation = sight.Seen - mean;
        var weight = Weigh(account.Weight * (1 - sight.Slip), innovation, total);
        if (Counts(weight))
        {
            ref var sound = ref Add(account, weight);
            sound.LastWild = false;
            if (account.LotOff) sound.Doubted |= 1;
            sound.Belief.Take(sight.Row, innovation, total);
        }

        (mean, variance) = account.Belief.Along(sight.WildRow);
        weight = Weigh(account.Weight * sight.Slip * sight.SlipOdds, sight.Seen - mean, variance + sight.WildVariance);
        if (!Counts(weight)) return;
        ref var slip = ref Add(account, weight);
        slip.LastWild = true;
        slip.Doubted |= 1;
    }

    // What is already negligible beside another account need not be worked out.
    private bool Counts(double weight) => weight > 0 && weight >= Negligible * _likeliest && _made < _next.Length;

    private ref Hypothesis Add(in Hypothesis account, double weight)
    {
        _likeliest = Math.Max(_likeliest, weight);
        ref var added = ref _next[_made++];
        added = account;
        added.Weight = weight;
        return ref added;
    }

    // Joins what became one account, forgets what is no longer likely, and makes the rest add up to one.
    private void Keep()
    {
        if (_made == 0) return;
        _count = 0;
        for (var i = 0; i < _made; i++)
            if (_next[i].Weight >= Negligible * _likeliest) Join(_next[i]);
        Array.Sort(_held, 0, _count, Likelier.Instance);
        _count = Math.Min(_count, Most);
        var sum = 0.0;
        for (var i = 0; i < _count; i++) sum += _held[i].Weight;
        for (var i = 0; i < _count; i++) _held[i].Weight /= sum;
    }

    private void Join(in Hypothesis account)
    {
        for (var i = 0; i < _count; i++)
            if (_held[i].Kind == account.Kind)
            {
                _held[i].Join(account);
                return;
            }

        if (_count == _held.Length) Array.Resize(ref _held, 2 * _count);
        _held[_count++] = account;
    }

    private void Advance(ref Hypothesis account, double days, double scatter)
    {
        ref var belief = ref account.Belief;
        if (account.Drifts)
        {
            account.DriftDays += days;
            belief.Drift(days);
            belief.Loosen(Belief.Rate, (account.Fast ? _model.FastTimes * _model.FastTimes : 1) * _model.RateWalkPerDay * days);
        }

        belief.Loosen(Belief.Bias, _model.BiasWalkPerDay * days);
        if (_model.Learns) belief.Loosen(Belief.Reference, _model.LevelWalkPerDay * days);
        else belief.Relax(Belief.Reference, Math.Exp(-days / _model.SharedDays), _model.Shared * _model.Shared);
        if (_model.WanderSd > 0) belief.Relax(Belief.Passing, Math.Exp(-days / _model.WanderDays), scatter * _model.WanderSd * _model.WanderSd);
    }

    private void Begin(double wideShare)
    {
        _count = 0;
        Join(Fresh(1 - wideShare, _model.CalibratedSd, 0));
        Join(Fresh(wideShare, _model.UncheckedSd, ApartFor));
    }

    private Hypothesis Fresh(double weight, double biasSd, byte apart)
    {
        var fresh = new Hypothesis { Weight = weight, DriftDays = -1, Apart = apart };
        fresh.Belief.Set(Belief.Bias, 0, biasSd * biasSd);
        fresh.Belief.Set(Belief.Gain, _model.Gain.Mean, _model.Gain.Sd * _model.Gain.Sd);
        fresh.Belief.Set(Belief.Reference, _model.Level.Mean, _model.Level.Sd * _model.Level.Sd);
        fresh.Belief.Set(Belief.Passing, 0, _model.WanderSd * _model.WanderSd);
        return fresh;
    }

    /// <summary>Mean and variance of one of the numbers over all accounts.</summary>
    public (double Mean, double Variance) Moments(int number)
    {
        var row = default(Five);
        row[number] = 1;
        return Moments(row);
    }

    /// <summary>Mean and variance of a weighted sum of the numbers over all accounts.</summary>
    public (double Mean, double Variance) Moments(in Five row)
    {
        var (mean, square) = (0.0, 0.0);
        for (var i = 0; i < _count; i++)
        {
            var (m, v) = _held[i].Belief.Along(row);
            mean += _held[i].Weight * m;
            square += _held[i].Weight * (v + (m * m));
        }

        return (mean, Math.Max(0, square - (mean * mean)));
    }

    /// <summary>The probability that the size of a weighted sum exceeds a limit, by more than the newest check: a shift that it alone speaks for is left to its repeat.</summary>
    public double Beyond(in Five row, double limit)
    {
        var sum = 0.0;
        for (var i = 0; i < _count; i++)
        {
            if (_held[i].JustJumped) continue;
            var (m, v) = _held[i].Belief.Along(row);
            var sd = Math.Sqrt(Math.Max(v, 1e-18));
            sum += _held[i].Weight * (Normal.Above((limit - m) / sd) + Normal.Above((limit + m) / sd));
        }

        return sum;
    }

    /// <summary>The probability that a kept pair's test is not to be believed; 0 is the newest.</summary>
    public double Doubt(int back)
    {
        if (back > 63) return 0;
        var sum = 0.0;
        for (var i = 0; i < _count; i++)
            if ((_held[i].Doubted >> back & 1) != 0) sum += _held[i].Weight;
        return sum;
    }

    /// <summary>The probability that the newest check stands alone: its test was a slip, or it is the first to speak of a shift.</summary>
    public double StandsAlone
    {
        get
        {
            var sum = 0.0;
            for (var i = 0; i < _count; i++)
                if ((_held[i].Doubted & 1) != 0 || _held[i].JustJumped) sum += _held[i].Weight;
            return sum;
        }
    }

    /// <summary>The probability that the probe drifts.</summary>
    public double Drifts
    {
        get
        {
            var sum = 0.0;
            for (var i = 0; i < _count; i++)
                if (_held[i].Drifts) sum += _held[i].Weight;
            return sum;
        }
    }

    /// <summary>The probability that the lot of reagent in use is bad.</summary>
    public double LotsOff
    {
        get
        {
            var sum = 0.0;
            for (var i = 0; i < _count; i++)
                if (_held[i].LotOff) sum += _held[i].Weight;
            return sum;
        }
    }

    // However long nobody tested, most of what is believed goes on being believed.
    private static double Within(double perDay, double days) => Math.Min(0.3, 1 - Math.Exp(-perDay * Math.Max(days, 0)));

    private double Weigh(double before, double x, double variance)
    {
        if (!(before > 0)) return 0;
        var far = 0.5 * x * x / variance;
        _nearest = Math.Min(_nearest, far);
        return before * (Math.Exp(_eased - far) / Math.Sqrt(2 * Math.PI * variance));
    }

    private sealed class Likelier : IComparer<Hypothesis>
    {
        public static readonly Likelier Instance = new();

        public int Compare(Hypothesis x, Hypothesis y) => y.Weight.CompareTo(x.Weight);
    }
}
