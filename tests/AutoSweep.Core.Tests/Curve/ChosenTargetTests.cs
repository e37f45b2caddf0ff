using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Curve;

public class ChosenTargetTests
{
    private static readonly TargetCurve First = new("first (invented)", "a test", [new(1, 5, 1)]);
    private static readonly TargetCurve Second = First.With(new(1, 6, 1));

    [Fact]
    public void Without_a_choice_the_profiles_own_curve_stands()
    {
        var state = Some.Fold(new JobOpened("test", Some.Profile));
        Assert.Equal(TargetCurve.Of(Some.Profile).Points, TargetCurve.Of(state).Points);
        Assert.Null(state.LastTarget);
    }

    [Fact]
    public void Taking_the_choice_back_brings_the_earlier_one_and_then_the_profiles()
    {
        var state = Some.Fold(new JobOpened("test", Some.Profile), new TargetChosen(First), new TargetChosen(Second));
        Assert.Equal((3, Second), state.LastTarget);
        state = state.Apply(new(4, Some.Time, new EntryWithdrawn(3)));
        Assert.Equal(First, TargetCurve.Of(state));
        Assert.Equal((2, First), state.LastTarget);
        state = state.Apply(new(5, Some.Time, new EntryWithdrawn(2)));
        Assert.Null(state.ChosenTarget);
        Assert.Null(state.LastTarget);
    }

    [Fact]
    public void Taking_an_older_choice_back_leaves_the_later_one() =>
        Assert.Equal(Second, Some.Fold(new JobOpened("test", Some.Profile), new TargetChosen(First), new TargetChosen(Second), new EntryWithdrawn(2)).ChosenTarget);
}
