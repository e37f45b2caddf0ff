namespace AutoSweep.Core.Magnets;

/// <summary>Guides a hand at one magnet rod until the level is in its band, as a conversation: it proposes a move and is told the reading after it.</summary>
/// <remarks>
/// It knows no meter, clock or hand, so a bench, a simulator and a journal being read again all drive it alike; the same readings give the same moves. It
/// learns the rod's decibels a millimetre from every move. Wheels are protected by four rules: the first move is always out; every approach comes from far;
/// no move in goes further than the gap that is known to be there allows (<see cref="InwardLimit"/>); and a level that goes the wrong way ends the work.
/// See docs/levelling.md. Not for use by several threads at once.
/// </remarks>
public sealed class MagnetGuidance
{
    private readonly MagnetGuidanceOptions _options;
    private readonly MagnetRod _rod;
    private readonly List<MagnetReading> _trace = [];
    private GuidanceStep? _next;
    private int _unheard;
    private bool _wrongWay;
    private int _repeats;

    /// <summary>Begins with a rod.</summary>
    /// <param name="rod">What is known of it.</param>
    /// <param name="options">How it is guided.</param>
    public MagnetGuidance(MagnetRod rod, MagnetGuidanceOptions options)
    {
        ArgumentNullException.ThrowIfNull(rod);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentOutOfRangeException.ThrowIfNegative(rod.LeastGapMillimetres);
        (_rod, _options) = (rod, options);
        Slope = SlopeBelief.Prior(FieldLaw.Expected(rod.WheelTeeth), FieldLaw.Spread);
    }

    /// <summary>What is known of the rod's slope.</summary>
    public SlopeBelief Slope { get; private set; }

    /// <summary>The latest reading; none before the first.</summary>
    public MagnetReading? Current => _trace.Count == 0 ? null : _trace[^1];

    /// <summary>How many moves were made.</summary>
    public int Moves => _trace.Count(reading => reading.After is not null);

    /// <summary>Begins with a rod and is told what a journal has kept of it: an undo leaves its last reading out.</summary>
    public static MagnetGuidance Replay(MagnetRod rod, MagnetGuidanceOptions options, IEnumerable<MagnetReading> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        var guidance = new MagnetGuidance(rod, options);
        foreach (var reading in readings)
            guidance.Tell(reading);
        return guidance;
    }

    /// <summary>What is wanted next; the same until a reading is told.</summary>
    public GuidanceStep Next() => _next ??= Decide();

    /// <summary>Tells a reading, whether or not it follows the move that was proposed.</summary>
    /// <exception cref="ArgumentException">The reading is not a number, or its uncertainty is not above 0.</exception>
    public void Tell(MagnetReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (!double.IsFinite(reading.Decibels) || reading.SdDecibels is not > 0)
            throw new ArgumentException($"A reading of {reading.Decibels} ± {reading.SdDecibels} dB.", nameof(reading));
        _repeats = IsUnsteady(reading) ? _repeats + 1 : 0;
        if (reading.After is { } move && Current is { } before)
            Learn(move, before, reading);
        _trace.Add(reading);
        _next = null;
    }

    private bool IsUnsteady(MagnetReading reading) => reading.SdDecibels > _options.HalfBandDecibels;

    // A move that was not heard says nothing of the slope: the rod has not moved.
    private void Learn(MagnetMove move, MagnetReading before, MagnetReading after)
    {
        var (rise, noise) = (after.Decibels - before.Decibels, double.Hypot(before.SdDecibels, after.SdDecibels));
        var locking = _options.LockingMillimetres * Slope.Quantile(0.95);
        var expected = -move.OutwardMillimetres;
        var allowed = (4 * noise) + (3 * locking);
        _wrongWay = rise * Math.Sign(expected) < -allowed;
        if (Math.Abs(rise) < 3 * noise && Slope.Quantile(0.05) * Math.Abs(expected) > 6 * noise)
        {
            _unheard++;
            return;
        }

        _unheard = 0;
        Slope = Slope.With(move.OutwardMillimetres, TravelSd(move), rise, noise);
    }

    private double TravelSd(MagnetMove move)
    {
        var (away, back) = (move.Millimetres + move.OvershootMillimetres, move.OvershootMillimetres);
        return double.Hypot(_options.HandShare * double.Hypot(away, back), _options.LockingMillimetres);
    }

    private GuidanceStep Decide()
    {
        if (Current is not { } now)
            return new GuidanceStep.Read();
        if (IsUnsteady(now))
            return _repeats > _options.Repeats ? End(GuidanceEnding.Unsteady) : new GuidanceStep.Read();
        if (Math.Abs(now.Decibels) <= _options.HalfBandDecibels)
            return End(GuidanceEnding.InBand);
        if (_wrongWay)
            return End(GuidanceEnding.WrongWay);
        if (_unheard == 2)
            return End(GuidanceEnding.NoEffect);
        if (Moves >= _options.Budget)
            return End(GuidanceEnding.BudgetSpent);
        return _unheard == 1 ? Out(2 * Last!.Millimetres) : now.Decibels > 0 ? Out(now.Decibels / Slope.Median) : Approach(now);
    }

    private MagnetMove? Last => _trace.LastOrDefault(reading => reading.After is not null)?.After;

    private GuidanceStep Approach(MagnetReading now)
    {
        var inward = InwardLimit.MostInward(now.Decibels - _trace[0].Decibels, double.Hypot(now.SdDecibels, _trace[0].SdDecibels), Slope);
        var deepest = _rod.LeastGapMillimetres - _options.ReserveMillimetres;
        var need = -now.Decibels / Slope.Median;
        if ((-now.Decibels - _options.HalfBandDecibels) / Slope.Quantile(0.95) > deepest - inward)
            return End(GuidanceEnding.NearContact);
        if (Moves == 0)
            return Out(_options.ProbeDecibels / Slope.Median);
        var longest = InwardLimit.LongestMove(inward, _rod.LeastGapMillimetres, _options);
        return need <= longest ? Order(MoveDirection.In, need)
            : longest * Slope.Median >= _options.HalfBandDecibels ? Order(MoveDirection.In, longest) : End(GuidanceEnding.NearContact);
    }

    private GuidanceStep.Move Out(double millimetres) => Order(MoveDirection.Out, millimetres);

    private GuidanceStep.Move Order(MoveDirection direction, double wanted)
    {
        var most = Last is { } last ? _options.LargestGrowth * last.Millimetres : double.MaxValue;
        var millimetres = Math.Max(Math.Min(wanted, most), _options.SmallestMillimetres);
        return new(new(direction, millimetres, direction == MoveDirection.Out ? _options.OvershootMillimetres : 0), millimetres / Last?.Millimetres);
    }

    private GuidanceStep.Done End(GuidanceEnding ending) => new(new(
        ending, Moves, Current?.Decibels, _trace.MinBy(reading => Math.Abs(reading.Decibels))?.Decibels, Slope, [.. _trace]));
}
