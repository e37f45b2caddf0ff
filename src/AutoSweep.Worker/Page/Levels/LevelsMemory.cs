using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Page.Levels;

/// <summary>What was worked out last, kept until one of the things that it was worked out from is another.</summary>
/// <remarks>The parts of a state are immutable and stay the same objects until they change: readings in between cost nothing.</remarks>
public sealed class LevelsMemory
{
    private object?[] _from = [];
    private LevelsView? _view;

    /// <summary>The view of a state, worked out anew only where something that it shows has changed.</summary>
    /// <param name="state">A job that has been opened.</param>
    public LevelsView Of(JobState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        object?[] from = [state.Profile, state.Surveyed, state.Checked, state.AsLeft, state.ChosenTarget];
        if (_view is not null && from.Zip(_from).All(pair => ReferenceEquals(pair.First, pair.Second)))
            return _view;
        (_view, _from) = (LevelsView.Of(state), from);
        return _view;
    }
}
