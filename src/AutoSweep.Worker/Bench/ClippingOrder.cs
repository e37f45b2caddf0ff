using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Bench;

/// <summary>The order of clipping as evidence: somebody who goes up output by output will go on so.</summary>
public static class ClippingOrder
{
    // Two neighbours in a row might be chance; three are a habit.
    private const int Habit = 3;

    /// <summary>The output that comes next by habit.</summary>
    /// <param name="state">The job.</param>
    /// <param name="stage">The stage.</param>
    /// <returns>None when there is no habit, or nothing left above.</returns>
    public static int? Next(JobState state, JobStage stage)
    {
        if (!IsAscending(state, stage))
            return null;
        var last = state.ClippingOrder[^1];
        return state.Missing(stage).Where(output => output > last).Select(output => (int?)output).FirstOrDefault();
    }

    /// <summary>The missing outputs that somebody who goes up by habit passed over on the way to one.</summary>
    /// <param name="state">The job.</param>
    /// <param name="stage">The stage.</param>
    /// <param name="to">The output at the clips now.</param>
    public static IReadOnlyList<int> PassedOver(JobState state, JobStage stage, int to) => IsAscending(state, stage)
        ? [.. state.Missing(stage).Where(output => output > state.ClippingOrder[^1] && output < to)]
        : [];

    private static bool IsAscending(JobState state, JobStage stage)
    {
        if (state.ClippingOrder.Count < Habit)
            return false;
        var planned = state.Planned[stage];
        var places = state.ClippingOrder.TakeLast(Habit).Select(output => planned.ToList().IndexOf(output)).ToList();
        return places.Zip(places.Skip(1)).All(pair => pair.Second > pair.First);
    }
}
