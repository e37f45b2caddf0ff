using AutoSweep.Worker.ByHand;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.ByHand;

public class EyeReadMeterTests
{
    private static readonly LevelExpectation TwelveMillivolts = new(0.0121, 3, "is what the readings so far say");

    [Fact]
    public async Task A_typed_level_is_taken_when_it_is_plausible()
    {
        var (meter, person) = Meter("12.4");
        meter.Expected = TwelveMillivolts;

        Assert.Equal(0.0124, (await meter.AskAsync(false, default))!.Value.Volts, 1e-12);
        Assert.Single(person.Asked);
    }

    // The question names both; the person's second answer decides, nothing is changed silently.
    [Theory]
    [InlineData("124", "12.4", 0.0124)]
    [InlineData("1.24", "12.4", 0.0124)]
    [InlineData("12.4 V", "12.4 mV", 0.0124)]
    [InlineData("1.24", "1.24", 0.00124)]
    public async Task A_slip_of_a_decade_is_asked_about_and_never_changed(string typed, string again, double volts)
    {
        var (meter, person) = Meter(typed, again);
        meter.Expected = TwelveMillivolts;

        var level = await meter.AskAsync(false, default);

        Assert.Equal(volts, level!.Value.Volts, 1e-12);
        Assert.Contains("or 12.4 mV?", person.Asked[1], StringComparison.Ordinal);
        Assert.Contains("is what the readings so far say", person.Asked[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_no_decade_explains_is_asked_about_without_a_guess()
    {
        var (meter, person) = Meter("40", "40");
        meter.Expected = TwelveMillivolts;

        Assert.Equal(0.04, (await meter.AskAsync(false, default))!.Value.Volts, 1e-12);
        Assert.DoesNotContain(" or ", person.Asked[1].Split('.')[0] + person.Asked[1].Split("say.")[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nonsense_and_impossible_values_are_refused_with_what_was_expected()
    {
        var (meter, person) = Meter("twelve", "12.4 mA", "900 V", "12.4");

        Assert.Equal(0.0124, (await meter.AskAsync(false, default))!.Value.Volts, 1e-12);
        Assert.Equal(3, person.Told.Count);
        Assert.Contains("expected a level such as 12.4 (in mV)", person.Told[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task U_takes_the_last_level_back_where_there_is_one()
    {
        var (meter, person) = Meter("u", "u");

        Assert.Null(await meter.AskAsync(canTakeBack: true, default));
        await Assert.ThrowsAsync<OperationCanceledException>(() => meter.AskAsync(canTakeBack: false, default));
        Assert.Contains("no level", person.Told.Single(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_question_mark_helps_and_q_stops()
    {
        var (meter, person) = Meter("?", "q");

        await Assert.ThrowsAsync<OperationCanceledException>(() => meter.AskAsync(false, default));
        Assert.Contains("12,4", person.Told.Single(), StringComparison.Ordinal);
    }

    // A step of the last digit is a rectangular distribution, step/√12 (GUM, F.2.2.1).
    [Fact]
    public void More_digits_are_less_noise()
    {
        var meter = new EyeReadMeter(new FakeDialogue(), new() { FlickerPercent = 0.01 });

        Assert.Equal(0.1 / Math.Sqrt(12) / 12.4, meter.RelativeNoise(new(0.0124, 1e-4)), 1e-5);
        Assert.True(meter.RelativeNoise(new(0.0124, 1e-5)) < meter.RelativeNoise(new(0.0124, 1e-4)));
    }

    private static (EyeReadMeter Meter, FakeDialogue Person) Meter(params string[] answers)
    {
        var person = new FakeDialogue(answers);
        return (new(person, new()), person);
    }
}
