using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Peaks;

/// <summary>Before the general law is believed on the strength of one reading, that reading is taken again.</summary>
/// <remarks>With its five unknowns the general law can follow one spoilt reading of an ordinary output.</remarks>
internal static class RareLawRule
{
    private const int EnoughToDoubt = 6;

    internal static SearchMove? Consider(SearchState state)
    {
        if (state.Mixture is not { Best.Law: ResponseLaw.General } || state.Log.Used.Length < EnoughToDoubt)
            return null;
        return Pivot(state) is { } pivot ? SecondLook.At(state, pivot) ?? Consider(state) : null;
    }

    // The reading without which an ordinary law explains the rest best.
    private static int? Pivot(SearchState state)
    {
        (int? Position, double Misfit) best = (null, double.PositiveInfinity);
        foreach (var position in state.Log.Used.Where(position => !state.Log.IsConfirmed(position)))
        {
            var without = state.MixtureWithout(position);
            if (without is { Misfits: false } && without.Best.Law != ResponseLaw.General && without.Misfit < best.Misfit)
                best = (position, without.Misfit);
        }
        return best.Position;
    }
}
