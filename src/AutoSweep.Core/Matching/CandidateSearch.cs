using AutoSweep.Core.Stock;

namespace AutoSweep.Core.Matching;

/// <summary>Enumerates the combinations within the loss limit for one target, on top of what is pinned to it.</summary>
internal sealed class CandidateSearch
{
    // Triples of two thousand parts are a thousand million; this many are looked at, the nearest ones, in well under a second.
    private const long MostTriples = 300_000;

    private readonly LevelLoss _loss;
    private readonly double _limit;
    private readonly (long Least, long Most)? _window;
    private readonly int[] _places;
    private readonly long[] _values;
    private readonly double[] _variances;
    private readonly long _pinned;
    private readonly double _pinnedVariance;
    private readonly SortedSums _sums;
    private readonly IReadOnlySet<int> _earlier;

    /// <summary>A search for one target.</summary>
    /// <param name="target">The target.</param>
    /// <param name="limitDecibels">The loss limit.</param>
    /// <param name="parts">All parts; a candidate names their places in this list.</param>
    /// <param name="free">The places of the parts that may be added.</param>
    /// <param name="pinned">The places of the parts that must be in every combination.</param>
    /// <param name="earlier">The places of the parts that an earlier match gave to this target.</param>
    public CandidateSearch(
        MatchTarget target, double limitDecibels, IReadOnlyList<Part> parts, IEnumerable<int> free, IReadOnlyList<int> pinned,
            IReadOnlySet<int> earlier)
    {
        _loss = new(target);
        _limit = Math.Pow(10, limitDecibels / 10) - 1;
        _earlier = earlier;
        _places = [.. free.Where(place => IsRated(parts[place], target)).OrderBy(place => parts[place].Measured.Picofarads)];
        _values = [.. _places.Select(place => parts[place].Measured.Picofarads)];
        _variances = [.. _places.Select(place => Variance(parts[place]))];
        _pinned = pinned.Sum(place => parts[place].Measured.Picofarads);
        _pinnedVariance = pinned.Sum(place => Variance(parts[place]));
        _sums = new(_values);
        if (_loss.Window(limitDecibels) is { } window)
            _window = ((long)Math.Ceiling(window.Least) - _pinned, (long)Math.Floor(Math.Min(window.Most, 1e15)) - _pinned);
    }

    /// <summary>The pinned parts by themselves, whatever they lose.</summary>
    public Candidate PinnedAlone => new(-1, -1, -1, _loss.MeanSquare(_pinned, _pinnedVariance));

    /// <summary>The best combinations with so many added parts.</summary>
    /// <param name="added">How many parts are added to the pinned ones: 1, 2 or 3.</param>
    /// <param name="keep">How many combinations are kept, beside those with a part of the earlier match.</param>
    public CandidateSet Best(int added, int keep)
    {
        var shelf = new CandidateShelf(keep, _limit, added < 3 ? _earlier : new HashSet<int>());
        if (_window is not { } window)
            return shelf.Take();
        if (added == 1)
            OfferRun(shelf, -1, -1, _sums.Singles(window.Least, window.Most));
        else if (added == 2)
            _sums.Pairs(0, window.Least, window.Most, (first, from, to) => OfferRun(shelf, -1, first, (from, to)));
        else
            OfferTriples(shelf, window.Least, window.Most);
        return shelf.Take();
    }

    private static bool IsRated(Part part, MatchTarget target) => target.RequiredVolts <= 0 || part.RatedVolts >= target.RequiredVolts;

    private static double Variance(Part part) => part.Measured.UncertaintyPicofarads * part.Measured.UncertaintyPicofarads;

    private void OfferTriples(CandidateShelf shelf, long least, long most)
    {
        var wanted = (least + most) / 2;
        for (long count; (count = CountTriples(least, most)) > MostTriples;)
        {
            var share = 0.8 * MostTriples / count;
            (least, most) = ((long)(wanted - ((wanted - least) * share)), (long)(wanted + ((most - wanted) * share)));
            // Triples outside the narrowed range were not looked at: they lose at least this, were their parts measured without error.
            shelf.Leave(Math.Min(_loss.MeanSquare(_pinned + least, 0), _loss.MeanSquare(_pinned + most, 0)));
        }

        _sums.Triples(least, most, (smallest, first, from, to) => OfferRun(shelf, smallest, first, (from, to)));
    }

    private long CountTriples(long least, long most)
    {
        var count = 0L;
        _sums.Triples(least, most, (_, _, from, to) => count += to - from);
        return count;
    }

    private void OfferRun(CandidateShelf shelf, int first, int second, (int From, int To) run)
    {
        var sum = _pinned + Value(first) + Value(second);
        var variance = _pinnedVariance + Spread(first) + Spread(second);
        for (var last = run.From; last < run.To; last++)
        {
            var square = _loss.MeanSquare(sum + _values[last], variance + _variances[last]);
            shelf.Offer(new(_places[last], Place(second), Place(first), square));
        }
    }

    private long Value(int index) => index < 0 ? 0 : _values[index];

    private double Spread(int index) => index < 0 ? 0 : _variances[index];

    private int Place(int index) => index < 0 ? -1 : _places[index];
}
