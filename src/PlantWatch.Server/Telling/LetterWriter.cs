using MimeKit;
using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plans;

namespace PlantWatch.Server.Telling;

/// <summary>A message as a letter: plain text, the strip as a picture beside it, and an id by which a mailbox can drop a double.</summary>
internal sealed class LetterWriter(MessageText text)
{
    public MimeMessage Write(Outgoing outgoing, string name, string address, string sender)
    {
        var (message, domain) = (outgoing.Message, sender[(sender.IndexOf('@', StringComparison.Ordinal) + 1)..]);
        var letter = new MimeMessage { Subject = text.Subject(message), MessageId = $"{message.Id:N}@{domain}", Importance = Importance(message) };
        letter.From.Add(new MailboxAddress(message.Site.Length > 0 ? message.Site : "PlantWatch", sender));
        letter.To.Add(new MailboxAddress(name, address));
        // All letters about one occurrence stand under one another.
        letter.References.Add($"{message.Alarm:N}@{domain}");
        // RFC 3834: no robot need answer.
        letter.Headers.Add("Auto-Submitted", "auto-generated");
        var body = new BodyBuilder { TextBody = text.Body(message) };
        if (outgoing.Picture is { } picture) body.Attachments.Add("strip.png", picture, new ContentType("image", "png"));
        if (outgoing.Enclosed is { } enclosed) body.Attachments.Add(enclosed.Name, enclosed.Bytes, ContentType.Parse(enclosed.MediaType));
        letter.Body = body.ToMessageBody();
        return letter;
    }

    private static MessageImportance Importance(Message message) =>
        message.Kind == NoticeKind.Raised && message.Priority >= Priority.High ? MessageImportance.High : MessageImportance.Normal;
}
