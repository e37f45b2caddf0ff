namespace AutoSweep.Worker.Bench;

/// <summary>A time without any tone: when it began, what was tried, what the meter read.</summary>
/// <param name="clock">The bench's clock.</param>
internal sealed class SilentSpell(TimeProvider clock)
{
    private readonly List<(LevelSample Reading, ToneSight.Silence Hum)> _readings = [];
    private long? _began;
    private long _askedAt;
    private long _huntedAt;

    /// <summary>The readings taken when the person was asked, oldest first; each may belong to one silent output.</summary>
    public IReadOnlyList<(LevelSample Reading, ToneSight.Silence Hum)> Readings => _readings;

    /// <summary>How long it has been silent.</summary>
    public TimeSpan Length => _began is { } began ? clock.GetElapsedTime(began) : TimeSpan.Zero;

    /// <summary>How often the person was asked.</summary>
    public int Questions => _readings.Count;

    /// <summary>How long since it began or the person was last asked.</summary>
    public TimeSpan SinceAsked => _began is null ? TimeSpan.Zero : clock.GetElapsedTime(_askedAt);

    /// <summary>How long since it began or the fixture last hunted.</summary>
    public TimeSpan SinceHunted => _began is null ? TimeSpan.Zero : clock.GetElapsedTime(_huntedAt);

    /// <summary>Notes silence.</summary>
    public void Heard()
    {
        if (_began is not null)
            return;
        _began = clock.GetTimestamp();
        _askedAt = _huntedAt = _began.Value;
    }

    /// <summary>Notes that the fixture has hunted.</summary>
    public void Hunted() => _huntedAt = clock.GetTimestamp();

    /// <summary>Notes that the person was asked, and what the meter read.</summary>
    public void Asked(LevelSample reading, ToneSight.Silence hum)
    {
        _readings.Add((reading, hum));
        _askedAt = clock.GetTimestamp();
    }
}
