namespace AutoSweep.Core.Peaks;

/// <summary>The ordinary course: the expected capacitance first, then wherever most is to be learnt.</summary>
internal static class PlanRule
{
    internal static SearchMove Consider(SearchState state)
    {
        if (state.Log.Used.Length == 0)
            return SearchMove.Read(state.Prior.Expected);
        if (state.Options.Box is { } box)
            return SearchMove.Read(DialPlan.Choose(state, box));
        return SearchMove.Read(state.Mixture is { } mixture
            ? FlankPlan.Choose(mixture, state.Options, state.NextMinutes, state.Noise)
            : GridPlan.Choose(state.Grid, state.Prior, state.Options, state.Noise));
    }
}
