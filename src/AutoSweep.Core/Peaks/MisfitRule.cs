namespace AutoSweep.Core.Peaks;

/// <summary>Finds the reading that does not belong, asks for it once more, and gives up when no law explains the rest.</summary>
internal static class MisfitRule
{
    // With this many readings a network that one of the laws describes has been recognised.
    private const int EnoughToGiveUp = 9;

    // A drop in the sum of squares that one reading in ten thousand causes by chance alone (chi-squared, 1 degree of freedom: 15.1).
    private const double Telling = 15.1;

    internal static SearchMove? Consider(SearchState state)
    {
        if (state.Mixture is not { } mixture || state.Log.Used.Length < 4 || !mixture.Misfits)
            return null;
        if (Suspect(state, mixture) is not { } suspect)
            return state.Log.Used.Length >= EnoughToGiveUp ? SearchMove.Stop(PeakStopReason.ModelDoesNotHold) : null;
        return SecondLook.At(state, suspect) ?? Consider(state);
    }

    private static int? Suspect(SearchState state, LawMixture mixture)
    {
        (int? Position, double Drop) best = (null, Telling);
        foreach (var position in state.Log.Used)
        {
            if (state.Log.IsConfirmed(position) || state.MixtureWithout(position) is not { Misfits: false } without)
                continue;
            var drop = mixture.Misfit - without.Misfit;
            if (drop > best.Drop)
                best = (position, drop);
        }
        return best.Position;
    }
}
