// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/pdf_information.h"

#include <QCryptographicHash>
#include <QXmlStreamWriter>
#include <QtGlobal>
#include <optional>

namespace soakwright::pdf {
namespace {

constexpr auto kRdf = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
constexpr auto kDublinCore = "http://purl.org/dc/elements/1.1/";
constexpr auto kXmp = "http://ns.adobe.com/xap/1.0/";
constexpr auto kPdf = "http://ns.adobe.com/pdf/1.3/";
constexpr auto kPdfAId = "http://www.aiim.org/pdfa/ns/id/";
constexpr int kXrefLine = 20;  // ISO 32000-1, 7.5.4: every entry is 20 bytes

QString producer() { return QStringLiteral("Qt ") + QString::fromLatin1(qVersion()); }

/// A text string as UTF-16 in hexadecimal: nothing in it needs escaping.
QByteArray pdf_text(const QString& words) {
  QByteArray utf16("\xFE\xFF", 2);
  for (const QChar c : words) {
    utf16.append(static_cast<char>(c.unicode() >> 8));
    utf16.append(static_cast<char>(c.unicode() & 0xff));
  }
  return '<' + utf16.toHex() + '>';
}

QByteArray information_object(const DocumentFacts& facts) {
  QByteArray object = "1 0 obj\n<<\n/Title " + pdf_text(facts.title) + "\n";
  if (!facts.author.isEmpty()) object += "/Author " + pdf_text(facts.author) + "\n";
  if (!facts.subject.isEmpty()) object += "/Subject " + pdf_text(facts.subject) + "\n";
  object += "/Creator " + pdf_text(facts.program) + "\n/Producer " + pdf_text(producer()) + "\n";
  object +=
      "/CreationDate (D:" + facts.created.toUTC().toString(QStringLiteral("yyyyMMddHHmmss")).toLatin1() +
      "Z)\n>>\nendobj\n";
  return object;
}

/// Adds `shift` to the offset of every object that lies at or behind `from`.
bool shift_offsets(QByteArray& document, qsizetype xref, qsizetype from, qsizetype shift) {
  const qsizetype counts = document.indexOf('\n', xref) + 1;
  const qsizetype first_entry = document.indexOf('\n', counts) + 1;
  if (counts == 0 || first_entry == 0) return false;
  const QList<QByteArray> range = document.mid(counts, first_entry - counts).trimmed().split(' ');
  if (range.size() != 2) return false;
  const int entries = range[1].toInt();
  if (entries < 2 || first_entry + qsizetype{entries} * kXrefLine > document.size()) return false;
  for (int i = 0; i < entries; ++i) {
    const qsizetype at = first_entry + qsizetype{i} * kXrefLine;
    if (document[at + 17] != 'n') continue;
    bool ok = false;
    const qlonglong offset = document.mid(at, 10).toLongLong(&ok);
    if (!ok) return false;
    if (offset >= from) document.replace(at, 10, QByteArray::number(offset + shift).rightJustified(10, '0'));
  }
  return true;
}

std::optional<QByteArray> rebuilt(const QByteArray& document, const DocumentFacts& facts) {
  const qsizetype object = document.indexOf("1 0 obj");
  const qsizetype end = document.indexOf("endobj\n", object);
  const qsizetype start = document.lastIndexOf("startxref");
  if (object < 0 || end < 0 || start < 0) return std::nullopt;
  const qsizetype behind = end + 7;
  const QByteArray information = information_object(facts);
  const qsizetype shift = information.size() - (behind - object);
  bool ok = false;
  const qsizetype number_at = start + 10;
  const qsizetype number_end = document.indexOf('\n', number_at);
  const qlonglong xref = document.mid(number_at, number_end - number_at).trimmed().toLongLong(&ok);
  if (!ok || document.mid(xref, 4) != "xref") return std::nullopt;

  QByteArray result = document;
  result.replace(number_at, number_end - number_at, QByteArray::number(xref + shift));
  if (!shift_offsets(result, xref, behind, shift)) return std::nullopt;
  result.replace(object, behind - object, information);

  const qsizetype id = result.lastIndexOf("/ID [ <");
  const qsizetype id_end = result.indexOf(']', id);
  if (id < 0 || id_end < 0) return std::nullopt;
  result.replace(id, id_end + 1 - id, "/ID []");
  const QByteArray digest = QCryptographicHash::hash(result, QCryptographicHash::Md5).toHex();
  result.replace(id, 6, "/ID [ <" + digest + "> <" + digest + "> ]");
  return result;
}

}  // namespace

QByteArray xmp_of(const DocumentFacts& facts) {
  QByteArray packet;
  QXmlStreamWriter xml(&packet);
  const QString rdf = QLatin1String(kRdf);
  const QString dc = QLatin1String(kDublinCore);
  const auto listed = [&](const char* name, const char* kind, const QString& words, bool language) {
    if (words.isEmpty()) return;
    xml.writeStartElement(dc, QLatin1String(name));
    xml.writeStartElement(rdf, QLatin1String(kind));
    xml.writeStartElement(rdf, QStringLiteral("li"));
    if (language) xml.writeAttribute(QStringLiteral("xml:lang"), QStringLiteral("x-default"));
    xml.writeCharacters(words);
    xml.writeEndElement();
    xml.writeEndElement();
    xml.writeEndElement();
  };
  const auto description = [&] {
    xml.writeStartElement(rdf, QStringLiteral("Description"));
    xml.writeAttribute(rdf, QStringLiteral("about"), QString());
  };
  xml.writeProcessingInstruction(QStringLiteral("xpacket begin='\uFEFF' id='W5M0MpCehiHzreSzNTczkc9d'"));
  xml.writeNamespace(QStringLiteral("adobe:ns:meta/"), QStringLiteral("x"));
  xml.writeStartElement(QStringLiteral("adobe:ns:meta/"), QStringLiteral("xmpmeta"));
  xml.writeNamespace(rdf, QStringLiteral("rdf"));
  xml.writeStartElement(rdf, QStringLiteral("RDF"));
  xml.writeNamespace(dc, QStringLiteral("dc"));
  description();
  listed("title", "Alt", facts.title, true);
  listed("creator", "Seq", facts.author, false);
  listed("description", "Alt", facts.subject, true);
  xml.writeEndElement();
  const QString created = facts.created.toUTC().toString(QStringLiteral("yyyy-MM-ddTHH:mm:ssZ"));
  xml.writeNamespace(QLatin1String(kXmp), QStringLiteral("xmp"));
  description();
  xml.writeTextElement(QLatin1String(kXmp), QStringLiteral("CreatorTool"), facts.program);
  xml.writeTextElement(QLatin1String(kXmp), QStringLiteral("CreateDate"), created);
  xml.writeEndElement();
  xml.writeNamespace(QLatin1String(kPdf), QStringLiteral("pdf"));
  description();
  xml.writeTextElement(QLatin1String(kPdf), QStringLiteral("Producer"), producer());
  xml.writeEndElement();
  xml.writeNamespace(QLatin1String(kPdfAId), QStringLiteral("pdfaid"));
  description();
  xml.writeTextElement(QLatin1String(kPdfAId), QStringLiteral("part"), QStringLiteral("3"));
  xml.writeTextElement(QLatin1String(kPdfAId), QStringLiteral("conformance"), QStringLiteral("B"));
  xml.writeEndElement();
  xml.writeEndElement();
  xml.writeEndElement();
  xml.writeProcessingInstruction(QStringLiteral("xpacket end='w'"));
  return packet;
}

QByteArray with_information(const QByteArray& document, const DocumentFacts& facts) {
  return rebuilt(document, facts).value_or(document);
}

}  // namespace soakwright::pdf
