using AutoSweep.Core.Decades;
using AutoSweep.Core.Quantities;
using AutoSweep.Worker.ByHand;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.ByHand;

public class HandDialledBoxTests
{
    private static readonly DecadeBox Description = new()
    {
        Decades = [new() { StepPicofarads = 100_000 }, new() { StepPicofarads = 10_000 }, new() { StepPicofarads = 1000 }, new() { StepPicofarads = 100 }],
    };

    [Fact]
    public async Task It_says_which_dial_to_what_and_goes_by_enter()
    {
        var person = new FakeDialogue("");
        var box = new HandDialledBox(Description, person);

        Assert.Equal(new Capacitance(104_350), await box.SetAsync(new(104_366), default));
        Assert.Contains("x 100 nF: 1    x 10 nF: 0    x 1 nF: 4    x 100 pF: 3      = 104.30 nF", person.Asked.Single(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Dials_that_change_are_marked_and_a_setting_that_stands_is_not_asked_for()
    {
        var person = new FakeDialogue("", "");
        var box = new HandDialledBox(Description, person);
        await box.SetAsync(new(104_350), default);
        await box.SetAsync(new(104_360), default);
        await box.SetAsync(new(108_350), default);

        Assert.Equal(2, person.Asked.Count);
        Assert.Contains("x 1 nF: 8 <    x 100 pF: 3 ", person.Asked[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_value_that_was_dialled_is_used_instead()
    {
        var box = new HandDialledBox(Description, new FakeDialogue("105n"));

        Assert.Equal(new Capacitance(105_050), await box.SetAsync(new(104_350), default));
    }

    [Fact]
    public async Task A_value_far_from_the_asked_one_is_asked_about_and_one_that_cannot_be_dialled_refused()
    {
        var person = new FakeDialogue("10.4n", "", "104.35n", "hundred", "");
        var box = new HandDialledBox(Description, person);

        Assert.Equal(new Capacitance(104_350), await box.SetAsync(new(104_350), default));
        Assert.Contains("10.40 nF where 104.30 nF was asked for", person.Asked[1], StringComparison.Ordinal);
        Assert.Contains("cannot be dialled", person.Told[0], StringComparison.Ordinal);
        Assert.Contains("'hundred' is not understood", person.Told[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Measured_as_it_stands_a_slip_is_asked_about()
    {
        var person = new FakeDialogue("", "10.49n", "", "104.9n");
        var box = new HandDialledBox(Description, person);
        await box.SetAsync(new(104_350), default);

        var measured = await box.MeasureAsync(default);

        Assert.Equal(new Capacitance(104_900), measured.Shown);
        Assert.Contains("10.49 nF where the dials say 104.35 nF", person.Asked[2], StringComparison.Ordinal);
        // The last digit and 0.1 % of the meter as rectangular limits (GUM, 4.3.7 and F.2.2.1).
        Assert.Equal(Math.Sqrt((100.0 * 100 / 12) + (104.9 * 104.9 / 3)), measured.SdPicofarads, 1e-6);
    }

    [Fact]
    public async Task A_box_whose_every_dial_was_measured_once_need_not_be_measured_again()
    {
        var calibrated = Description with { Decades = [.. Description.Decades.Select(one => one with { Steps = 1, MeasuredPicofarads = [one.StepPicofarads * 1.004] })] };
        var person = new FakeDialogue("");
        var box = new HandDialledBox(calibrated, person);
        await box.SetAsync(new(100_000), default);

        Assert.Equal(BoxMeasurement.None, await box.MeasureAsync(default));
        Assert.Single(person.Asked);
    }

    [Fact]
    public async Task U_takes_the_level_before_back_instead()
    {
        var box = new HandDialledBox(Description, new FakeDialogue("u"));

        Assert.Null(await box.DialAsync(new(104_350), canTakeBack: true, default));
    }

    // Somebody who turns the dials and then remembers a misreading must not have the next level booked under the setting before.
    [Fact]
    public async Task After_a_level_was_taken_back_at_the_dials_it_asks_for_the_setting_again_even_if_it_stood_so()
    {
        var person = new FakeDialogue("", "u", "");
        var box = new HandDialledBox(Description, person);
        await box.SetAsync(new(80_050), default);
        Assert.Null(await box.DialAsync(new(116_050), canTakeBack: true, default));

        Assert.Equal(new Capacitance(80_050), await box.SetAsync(new(80_050), default));

        Assert.Equal(3, person.Asked.Count);
        Assert.Contains("= 80.00 nF", person.Asked[2], StringComparison.Ordinal);
    }
}
