using AutoSweep.Worker.Page.AtBench;

namespace AutoSweep.Worker.Tests.Page.AtBench;

public sealed class QuestionWordsTests
{
    [Theory]
    [InlineData("  >> 'x' is no level; expected one.", "'x' is no level; expected one.")]
    [InlineData("  DIAL it\n  Enter when it stands so", "DIAL it Enter when it stands so")]
    public void Indents_and_marks_of_the_terminal_are_left_out(string lines, string plain) => Assert.Equal(plain, QuestionWords.Plain(lines));

    [Theory]
    [InlineData("  >> 'x' is no level", true)]
    [InlineData("  Read the meter when its digits stand still", false)]
    public void A_complaint_is_told_from_help(string line, bool isComplaint) => Assert.Equal(isComplaint, QuestionWords.IsComplaint(line));
}
