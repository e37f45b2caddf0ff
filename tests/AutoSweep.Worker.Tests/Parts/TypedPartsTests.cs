using AutoSweep.Worker.Parts;

namespace AutoSweep.Worker.Tests.Parts;

public sealed class TypedPartsTests
{
    private readonly StringWriter _answers = new();

    [Theory]
    [InlineData("104.5n", 104_500)]
    [InlineData("0.1045u", 104_500)]
    [InlineData("4n7", 4_700)]
    public async Task A_value_is_understood_with_its_unit(string typed, long picofarads)
    {
        Assert.Equal(picofarads, (await Parts(typed).NextAsync(default))!.Capacitance.Picofarads);
    }

    [Fact]
    public async Task A_slip_is_answered_with_what_was_found_and_what_to_write_and_asked_for_again()
    {
        Assert.Equal(104_500, (await Parts("104,5n\n104.5n").NextAsync(default))!.Capacitance.Picofarads);
        Assert.Contains("'104,5n' is no capacitance", _answers.ToString(), StringComparison.Ordinal);
        Assert.Contains("104.5n", _answers.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("q")]
    [InlineData("")]
    public async Task Q_and_the_end_of_the_input_end_the_work(string typed)
    {
        var input = typed.Length == 0 ? new TypedParts(TextReader.Null, _answers, 0.005) : Parts(typed);

        Assert.Null(await input.NextAsync(default));
    }

    [Fact]
    public async Task A_typed_value_is_as_uncertain_as_the_meter_it_was_read_from()
    {
        // 0.5 % of 100 nF as a rectangular limit: 500 pF over the square root of 3 (JCGM 100:2008, 4.3.7).
        Assert.Equal(288.675, (await Parts("100n").NextAsync(default))!.StandardUncertaintyPicofarads, 3);
    }

    private TypedParts Parts(string typed) => new(new StringReader(typed), _answers, 0.005);
}
