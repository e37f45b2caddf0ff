using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Bench;

/// <summary>An honest estimate of the time left: the pace of this sitting, nothing else.</summary>
/// <param name="clock">The wall clock.</param>
public sealed class StageClock(TimeProvider clock)
{
    private JobStage? _stage;
    private long _began;
    private int _doneAtStart;

    /// <summary>The time left in words; says nothing before two outputs have set a pace.</summary>
    /// <param name="stage">The stage at work.</param>
    /// <param name="done">Outputs done.</param>
    /// <param name="planned">Outputs planned.</param>
    public string Remaining(JobStage stage, int done, int planned)
    {
        if (_stage != stage)
            (_stage, _began, _doneAtStart) = (stage, clock.GetTimestamp(), done);
        var fresh = done - _doneAtStart;
        if (fresh < 2 || done >= planned)
            return "";
        var left = clock.GetElapsedTime(_began) / fresh * (planned - done);
        return left < TimeSpan.FromMinutes(2)
            ? $"about {Math.Ceiling(left.TotalSeconds)} s left"
            : $"about {Math.Ceiling(left.TotalMinutes)} min left";
    }
}
